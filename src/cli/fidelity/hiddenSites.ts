import { type Airspace, makeAirspace } from '../../core/radio/arrivals';
import { directWave } from '../../core/radio/directWave';
import { coverShares } from '../../core/radio/localScatter';
import { sightString } from '../../core/radio/sightString';
import { fieldSquared } from '../../core/radio/waveVector';
import { randomFor } from '../../core/random/draw';
import type { Scenario } from '../../core/scenario/schema';
import { turnDeg } from '../../core/units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../../core/units/frames';
import { generateWorld } from '../../core/world/generate';
import { valueAt } from '../../core/world/grid';
import { opennessAt } from '../../core/world/openness';
import type { World } from '../../core/world/world';
import { drawnGround } from './drawnGround';
import { loudest, share } from './loudest';

export const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;

export type Place = { readonly errorDeg: number; readonly hidden: boolean };
export type Ground = { readonly scenario: Scenario; readonly world: World; readonly space: Airspace; readonly tagAt: MapPoint };

/** One ridged ground with a tag somewhere in its middle. */
export function ground(seed: number): Ground {
  const random = randomFor(`phenomena-${seed}`, 'test');
  const at: [number, number] = [900 + 1_200 * random(), 900 + 1_200 * random()];
  const whip = { leanDeg: 60 * random(), towardDeg: 359 * random() };
  const relief = { style: 'ridged', strengthM: 180, roughness: 0.5, baseHeightM: 220 } as const;
  const scenario = drawnGround(`phenomena-${seed}`, { relief }, { at, whip });
  const world = generateWorld(scenario);
  const tagAt = { eM: at[0], nM: at[1] };
  return { scenario, world, tagAt, space: makeAirspace({ scenario, world, tagIndex: 0, tagAt }) };
}

/** Bearings taken at places 300 to 1500 m from the tag. */
export function places({ scenario, world, space, tagAt }: Ground, seed: number, count: number): readonly Place[] {
  const random = randomFor(`places-${seed}`, 'test');
  const found: Place[] = [];
  while (found.length < count) {
    // every ten degrees: places share radials of the terrain field
    const at = stepAlong(tagAt, 10 * Math.floor(36 * random()), 300 + 1_200 * random());
    if (at.eM < 10 || at.nM < 10 || at.eM > world.sizeM - 10 || at.nM > world.sizeM - 10) continue;
    const waves = space.arrivalsAt(at, 1.7).waves;
    const string = sightString(world, { ...tagAt, heightM: scenario.tags[0]!.heightM }, { ...at, heightM: 1.7 });
    found.push({
      errorDeg: Math.abs(turnDeg(bearingDeg(at, tagAt), loudest(waves).headingDeg)),
      hidden: !string.clear,
    });
  }
  return found;
}

/**
 * Losses beyond free space of the direct wave at crests and in hollows, dB. Crests are the tenth of the places with the widest view
 * that also stand over the ground 150 m round, hollows the tenth with the narrowest that lie under it.
 */
export function crestsAndHollows(
  { scenario, world, space, tagAt }: Ground,
  seed: number,
  count: number,
): { crests: number[]; hollows: number[] } {
  const random = randomFor(`crests-${seed}`, 'test');
  const site = { scenario, world, tagIndex: 0, tagAt, field: space.field };
  const stands = Array.from({ length: count }, () => stepAlong(tagAt, 10 * Math.floor(36 * random()), 300 + 1_200 * random()))
    .filter((at) => at.eM > 10 && at.nM > 10 && at.eM < world.sizeM - 10 && at.nM < world.sizeM - 10)
    .map((at) => ({ at, over: crestM(world, at), open: opennessAt(world, at) }))
    .sort((a, b) => b.open - a.open);
  const tenth = Math.ceil(stands.length / 10);
  const lost = ({ at }: { at: MapPoint }) => {
    const loss = directWave(site, at, 1.7).wave.lossDb;
    return (loss.ground ?? 0) + (loss.terrain ?? 0) + (loss.wood ?? 0);
  };
  return {
    crests: stands
      .filter((s) => s.over > 0)
      .slice(0, tenth)
      .map(lost),
    hollows: stands
      .filter((s) => s.over < 0)
      .slice(-tenth)
      .map(lost),
  };
}

/** Height over the mean of the ground 150 m round, metres. */
function crestM(world: World, at: MapPoint): number {
  let mean = 0;
  for (let a = 0; a < 360; a += 30) {
    const p = stepAlong(at, a, 150);
    mean += valueAt(world.groundM, p.eM, p.nM) / 12;
  }
  return valueAt(world.groundM, at.eM, at.nM) - mean;
}

/** Share of places in a fade deeper than 8 dB below the mean of the woodland round that are out of it within 2 m. */
export function fadesLeft({ space, world, tagAt }: Ground, seed: number, count: number): readonly boolean[] {
  const random = randomFor(`fades-${seed}`, 'test');
  const out: boolean[] = [];
  const powerDb = (p: MapPoint) => {
    const sum = space.arrivalsAt(p, 1.7).waves.reduce((s, w) => [s[0]! + w.upRe, s[1]! + w.upIm], [0, 0]);
    return 10 * Math.log10(sum[0]! ** 2 + sum[1]! ** 2);
  };
  for (let tries = 0; tries < 4_000 && out.length < count; tries++) {
    const at = { eM: 20 + (world.sizeM - 40) * random(), nM: 20 + (world.sizeM - 40) * random() };
    if (distanceM(at, tagAt) < 200 || coverShares(world, at.eM, at.nM).wood < 0.9) continue;
    const waves = space.arrivalsAt(at, 1.7).waves;
    const meanDb = 10 * Math.log10(waves.reduce((s, w) => s + w.upRe ** 2 + w.upIm ** 2, 0));
    if (powerDb(at) > meanDb - 8) continue;
    const around = Array.from({ length: 16 }, (_, i) => stepAlong(at, i * 22.5, i % 2 ? 1 : 2));
    out.push(around.some((p) => powerDb(p) > meanDb - 8 && powerDb(p) > powerDb(at) + 3));
  }
  return out;
}

/** Of one walk that comes into view: the share of its strongest tenth of readings that are in view of the tag. */
export type Walk = { readonly strongestInView: number };

/** Straight walks of 600 m, 100 to 1500 m from the tag, a reading every 20 m, that begin hidden and have at least a tenth of their readings in view. */
export function walksIntoView({ scenario, world, space, tagAt }: Ground, seed: number, count: number): readonly Walk[] {
  const random = randomFor(`walks-${seed}`, 'test');
  const tag = { ...tagAt, heightM: scenario.tags[0]!.heightM };
  const found: Walk[] = [];
  for (let tries = 0; tries < 2_000 && found.length < count; tries++) {
    const [from, courseDeg] = [stepAlong(tagAt, 360 * random(), 100 + 1_400 * random()), 360 * random()];
    const stands = Array.from({ length: 31 }, (_, i) => stepAlong(from, courseDeg, 20 * i));
    const reached = (at: MapPoint) => Math.min(at.eM, at.nM) > 10 && Math.max(at.eM, at.nM) < world.sizeM - 10;
    if (!stands.every((at) => reached(at) && distanceM(at, tagAt) > 100 && distanceM(at, tagAt) < 1_500)) continue;
    const seen = stands.map((at) => sightString(world, tag, { ...at, heightM: 1.7 }).clear);
    if (seen[0] || seen.filter(Boolean).length < 4) continue;
    const readings = stands.map((at, i) => ({ power: loudest(space.arrivalsAt(at, 1.7).waves, 12).power, seen: seen[i]! }));
    const strongest = readings.sort((a, b) => b.power - a.power).slice(0, 3);
    found.push({ strongestInView: share(strongest.map((r) => r.seen)) });
  }
  return found;
}

/** Change of the direct wave over a short way at 400 places of a ground, the largest, dB. */
function largestChangeDb({ scenario, world, space, tagAt }: Ground, apartM: number): number {
  const site = { scenario, world, tagIndex: 0, tagAt, field: space.field };
  const directDb = (at: MapPoint) => 10 * Math.log10(fieldSquared(directWave(site, at, 1.7).wave));
  let worst = 0;
  for (let i = 0; i < 400; i++) {
    const [turn, far] = [30 + 0.02 * i, 5 + 2 * i];
    worst = Math.max(worst, Math.abs(directDb(stepAlong(tagAt, turn, far)) - directDb(stepAlong(tagAt, turn, far + apartM))));
  }
  return worst;
}

/** How many times the largest change of the direct wave over 0.25 m shrinks over 0.125 m; a step would not shrink at all. */
export const shrinkage = (place: Ground): number => largestChangeDb(place, 0.25) / largestChangeDb(place, 0.125);
