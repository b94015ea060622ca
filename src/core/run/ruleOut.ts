import type { Listener } from '../ear/loudness';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { pointOver } from '../world/height';
import { isInView } from '../world/inView';
import { coverAt } from '../world/profile';
import { COVER } from '../world/world';
import type { Exercise } from './exercise';
import { buzzAt, crosswiseDbm, leastHeardDbm, levelWaveGainDb } from './nominalReach';
import { type Silence, weakestTag } from './silence';
import { antennaHeightM } from './state';

/** Ground that is ruled out, as squares of the map: row-major from the south-west corner, 1 where the tag can't be. */
export type HatchGrid = { readonly columns: number; readonly cellM: number; readonly hatched: Uint8Array };

const SQUARE_M = 40;
const MOST_COLUMNS = 128;
/** By hand, ground within this distance of the place that was touched. */
export const HAND_M = 120;
/** A beep that is just heard is missed one time in four: what is ruled out would have been this much louder (our choice). */
export const SURE_DB = 6;
const SECTORS = 72;

export const squaresOf = (sizeM: number): { readonly columns: number; readonly cellM: number } => {
  const columns = Math.min(MOST_COLUMNS, Math.round(sizeM / SQUARE_M));
  return { columns, cellM: sizeM / columns };
};

export const noHatch = (sizeM: number): HatchGrid => {
  const { columns, cellM } = squaresOf(sizeM);
  return { columns, cellM, hatched: new Uint8Array(columns * columns) };
};

/** Middle of a square. */
export const squareAt = ({ columns, cellM }: Pick<HatchGrid, 'columns' | 'cellM'>, square: number): MapPoint => ({
  eM: ((square % columns) + 0.5) * cellM,
  nM: (Math.floor(square / columns) + 0.5) * cellM,
});

/** Is a place on hatched ground? */
export function isHatched({ columns, cellM, hatched }: HatchGrid, { eM, nM }: MapPoint): boolean {
  const [column, row] = [Math.floor(eM / cellM), Math.floor(nM / cellM)];
  return column >= 0 && row >= 0 && column < columns && row < columns && hatched[row * columns + column] === 1;
}

/** From where ground is ruled out, what was not heard there, and round which place; `null` is all that is in view. */
export type RuleOutAsked = {
  readonly at: MapPoint;
  readonly atTick: number;
  readonly around: MapPoint | null;
  readonly silences: readonly Silence[];
  readonly listener: Listener;
  /** Squares that are ruled out anyway: they are not looked at again. */
  readonly known?: HatchGrid;
};

/**
 * The squares that silence rules out: dry land in view from here, or that part of it round a place, where the weakest tag of the
 * list, lying crosswise, would have been heard on one of the headings and at one of the gains that brought nothing. Works on what a
 * walker may know; where the tag is, how it lies or how its strength has changed is not asked.
 */
export function ruledOutSquares(exercise: Exercise, asked: RuleOutAsked): HatchGrid {
  const { scenario, world } = exercise;
  const grid = noHatch(scenario.ground.sizeM);
  const tag = weakestTag(scenario);
  // What was not heard on a roof says nothing of the ground that is seen from its foot, and the other way round.
  const last = asked.silences.at(-1)?.hold.aloftM;
  const silences = asked.silences.filter(({ hold }) => hold.aloftM === last);
  const neededDbm = neededBySector(exercise, tag, { ...asked, silences });
  const highest = Math.max(...silences.map(({ hold }) => antennaHeightM(hold)), 1.7);
  const eye = pointOver(world, asked.at, 1.7);
  for (let square = 0; square < grid.hatched.length; square++) {
    if (asked.known?.hatched[square] === 1) continue;
    const place = squareAt(grid, square);
    if (asked.around && distanceM(place, asked.around) > HAND_M) continue;
    const least = neededDbm[sectorOf(bearingDeg(asked.at, place))]!;
    if (least === Number.POSITIVE_INFINITY || coverAt(world, place.eM, place.nM) === COVER.water) continue;
    if (crosswiseDbm(scenario, world, tag, place, asked.at, highest) < least + SURE_DB) continue;
    if (isInView(world, eye, place, scenario.tags[tag]!.heightM)) grid.hatched[square] = 1;
  }
  return grid;
}

const sectorOf = (deg: number): number => Math.round(deg / (360 / SECTORS)) % SECTORS;

/** The weakest level at an isotropic antenna that one of the silences would have let through, by the bearing it comes from, dBm. */
function neededBySector(exercise: Exercise, tag: number, { at, atTick, silences, listener }: RuleOutAsked): Float64Array {
  const needed = new Float64Array(SECTORS).fill(Number.POSITIVE_INFINITY);
  const { pulseMs } = exercise.scenario.tags[tag]!;
  const hasLines = exercise.world.powerLines.length > 0;
  const known = new Map<string, number | null>();
  for (const { hold, controls } of differing(silences)) {
    const buzzDbm = hasLines ? buzzAt(exercise, at, hold, atTick) : Number.NEGATIVE_INFINITY;
    const key = `${controls.gainDb}/${controls.attenuatorDb}/${Math.round(buzzDbm)}`;
    const least = known.has(key) ? known.get(key)! : leastHeardDbm(exercise, controls, buzzDbm, { listener, pulseMs });
    known.set(key, least);
    if (least === null) continue;
    for (let sector = 0; sector < SECTORS; sector++) {
      const fromDeg = (sector * 360) / SECTORS;
      needed[sector] = Math.min(needed[sector]!, least - levelWaveGainDb(exercise, tag, hold, fromDeg));
    }
  }
  return needed;
}

/** Silences that say something of their own: one for each setting, roll and ten degrees of heading. */
function differing(silences: readonly Silence[]): readonly Silence[] {
  const byHold = new Map<string, Silence>();
  for (const silence of silences) {
    const { hold, controls } = silence;
    const turn = `${Math.round(hold.headingDeg / 10)}/${Math.round(hold.rollDeg / 15)}/${hold.raised}/${hold.antenna}`;
    byHold.set(`${turn}/${Math.round(controls.gainDb)}/${controls.attenuatorDb}`, silence);
  }
  return [...byHold.values()];
}

/** Squares that one of them has. */
export function together(sizeM: number, grids: readonly HatchGrid[]): HatchGrid {
  const all = noHatch(sizeM);
  for (const { hatched } of grids) for (let i = 0; i < hatched.length; i++) if (hatched[i] === 1) all.hatched[i] = 1;
  return all;
}

export const squaresIn = ({ hatched }: HatchGrid): number => hatched.reduce((sum, one) => sum + one, 0);
