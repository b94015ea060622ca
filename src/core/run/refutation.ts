import type { Listener } from '../ear/loudness';
import { freeSpaceLossDb } from '../radio/freeSpace';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { groundHeightM, pointOver } from '../world/height';
import { isInView } from '../world/inView';
import { walkable } from '../world/walking';
import type { Exercise } from './exercise';
import { buzzAt, crosswiseDbm, leastHeardDbm, levelWaveGainDb } from './nominalReach';
import { SURE_DB } from './ruleOut';
import type { Hold, Mark } from './state';

/** What would show that a guessed place is wrong. Worked out from map, list and notebook, never from where a tag is. */
export type Refutation =
  /** A bearing was marked at less gain than even free space would need from the pin. */
  | { readonly kind: 'too-far'; readonly bearing: number; readonly heardNetDb: number; readonly neededDb: number }
  /** From a place the pin is in view: with this gain, on this heading, a tag there would surely be heard. */
  | {
      readonly kind: 'listen';
      readonly from: MapPoint;
      /** From where one stands; 0 is here. */
      readonly awayM: number;
      readonly awayDeg: number;
      /** How much higher than here, metres. */
      readonly higherM: number;
      readonly headingDeg: number;
      readonly gainDb: number;
    }
  /** No place within reach looks onto the pin where a tag would surely be heard. */
  | { readonly kind: 'out-of-view' };

export type Guessed = {
  readonly pin: MapPoint;
  readonly at: MapPoint;
  /** The tag that the dial is on. */
  readonly tag: number;
  readonly hold: Hold;
  readonly notebook: readonly Mark[];
  readonly tick: number;
  readonly listener: Listener;
};

/** Places to listen from are looked for so far round the walker, so far apart, and not nearer to the pin than this. */
const WITHIN_M = 600;
const APART_M = 50;
const LEAST_FROM_PIN_M = 60;
/** A receiver at more than this brings more noise than beep, and turns front and back into one (our choice). */
const MOST_GAIN_DB = 85;
/** What antenna, ground and a strong battery may add to a reading before it speaks against a place (our choice). */
const BENEFIT_DB = 6;

export function refutationOf(exercise: Exercise, guessed: Guessed): Refutation {
  const ladder = ladderOf(exercise, guessed);
  // A level wave on the nose of the antenna held flat, whatever the heading.
  const forwardDb = levelWaveGainDb(exercise, guessed.tag, { ...guessed.hold, headingDeg: 0, rollDeg: 0, raised: false }, 0);
  const needed = (levelDbm: number) => leastGain(ladder, levelDbm + forwardDb);
  return tooFar(exercise, guessed, needed) ?? listening(exercise, guessed, needed) ?? { kind: 'out-of-view' };
}

/** The weakest power that is heard at each whole gain without attenuator, dBm; lines buzz as they do where one stands. */
type Ladder = readonly (number | null)[];

function ladderOf(exercise: Exercise, { tag, listener, tick, at, hold }: Guessed): Ladder {
  const { pulseMs } = exercise.scenario.tags[tag]!;
  const buzzDbm = exercise.world.powerLines.length > 0 ? buzzAt(exercise, at, hold, tick) : Number.NEGATIVE_INFINITY;
  return Array.from({ length: 91 }, (_, gainDb) => leastHeardDbm(exercise, { gainDb, attenuatorDb: 0 }, buzzDbm, { listener, pulseMs }));
}

/** The least gain at which a power is heard; 91 where none is. */
function leastGain(ladder: Ladder, powerDbm: number): number {
  const gainDb = ladder.findIndex((least) => least !== null && least <= powerDbm);
  return gainDb < 0 ? ladder.length : gainDb;
}

/** Gain that a level at an isotropic antenna needs. */
type Needed = (levelDbm: number) => number;

function tooFar(exercise: Exercise, guessed: Guessed, needed: Needed): Refutation | null {
  const { eirpDbm, frequencyMHz } = exercise.scenario.tags[guessed.tag]!;
  let worst: Extract<Refutation, { kind: 'too-far' }> | null = null;
  guessed.notebook.forEach((mark, i) => {
    if (mark.struckOut) return;
    const levelDbm = eirpDbm - freeSpaceLossDb(Math.max(5, distanceM(mark.at, guessed.pin)), frequencyMHz) + BENEFIT_DB;
    const neededDb = needed(levelDbm);
    const heardNetDb = mark.gainDb - mark.attenuatorDb;
    if (neededDb - heardNetDb > (worst ? worst.neededDb - worst.heardNetDb : 0))
      worst = { kind: 'too-far', bearing: i + 1, heardNetDb, neededDb };
  });
  return worst;
}

function listening(exercise: Exercise, guessed: Guessed, needed: Needed): Refutation | null {
  const { scenario, world } = exercise;
  const { pin, at, tag } = guessed;
  for (const from of placesRound(at, scenario.ground.sizeM)) {
    if (distanceM(from, pin) < LEAST_FROM_PIN_M || !walkable(world, from)) continue;
    const levelDbm = crosswiseDbm(scenario, world, tag, pin, from, 1.7) - SURE_DB;
    const gainDb = needed(levelDbm);
    if (gainDb > MOST_GAIN_DB) continue;
    if (!isInView(world, pointOver(world, from, 1.7), pin, scenario.tags[tag]!.heightM)) continue;
    const higherM = groundHeightM(world, from) - groundHeightM(world, at);
    return {
      kind: 'listen',
      from,
      awayM: distanceM(at, from),
      awayDeg: bearingDeg(at, from),
      higherM,
      headingDeg: bearingDeg(from, pin),
      gainDb,
    };
  }
  return null;
}

/** Here, then places of a square lattice, the nearest first. */
function placesRound(at: MapPoint, sizeM: number): readonly MapPoint[] {
  const steps = Math.floor(WITHIN_M / APART_M);
  const places: MapPoint[] = [];
  for (let north = -steps; north <= steps; north++) {
    for (let east = -steps; east <= steps; east++) {
      const place = { eM: at.eM + east * APART_M, nM: at.nM + north * APART_M };
      const isIn = place.eM > 0 && place.nM > 0 && place.eM < sizeM && place.nM < sizeM;
      if (isIn && Math.hypot(east, north) <= steps) places.push(place);
    }
  }
  return places.sort((a, b) => distanceM(at, a) - distanceM(at, b));
}
