import { antennaById } from '../../src/core/antenna/catalogue';
import { makeReceivingAntenna } from '../../src/core/antenna/orientation';
import { type Airspace, makeAirspace } from '../../src/core/radio/arrivals';
import { directWave } from '../../src/core/radio/directWave';
import { coverShares } from '../../src/core/radio/localScatter';
import { sightString } from '../../src/core/radio/sightString';
import type { Wave } from '../../src/core/radio/wave';
import { fieldSquared } from '../../src/core/radio/waveVector';
import { randomFor } from '../../src/core/random/draw';
import type { Scenario } from '../../src/core/scenario/schema';
import { turnDeg } from '../../src/core/units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../../src/core/units/frames';
import { generateWorld } from '../../src/core/world/generate';
import { valueAt } from '../../src/core/world/grid';
import { opennessAt } from '../../src/core/world/openness';
import type { World } from '../../src/core/world/world';
import { plainScenario } from '../core/world/fixtureScenario';

const yagi = makeReceivingAntenna(antennaById('yagi3').pattern(150.1, 150));

/** Heading at which a hand Yagi hears most, best of flat and upright, degrees. */
export function apparentDeg(waves: readonly Wave[]): number {
  const hears = yagi.fan(waves);
  let [best, heading] = [-1, 0];
  for (const roll of [0, 45, 90])
    for (let deg = 0; deg < 360; deg += 3) {
      const value = hears(deg, roll);
      if (value > best) [best, heading] = [value, deg];
    }
  return heading;
}

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;
const share = (list: readonly boolean[]): number => list.filter(Boolean).length / list.length;

export type Place = { readonly errorDeg: number; readonly hidden: boolean };
export type Ground = { readonly scenario: Scenario; readonly world: World; readonly space: Airspace; readonly tagAt: MapPoint };

/** Towers that stand over the ridges: the line of which people say that everything points at it. */
const BIG_LINE = {
  voltage: 'high' as const,
  route: [
    [60, 900],
    [1_500, 1_250],
    [2_940, 1_700],
  ] as [number, number][],
  spanM: 250,
  supportHeightM: 45,
  wireHeightM: 32,
  conductors: 6,
};

/** One ridged ground with a tag somewhere in its middle. */
export function ground(seed: number, wired = false): Ground {
  const random = randomFor(`phenomena-${seed}`, 'test');
  const at: [number, number] = [900 + 1_200 * random(), 900 + 1_200 * random()];
  const plain = plainScenario();
  const scenario = plainScenario({
    seed: `phenomena-${seed}`,
    ground: { relief: { style: 'ridged', strengthM: 180, roughness: 0.5, baseHeightM: 220 }, powerLines: wired ? [BIG_LINE] : [] },
    tags: [{ ...plain.tags[0]!, at, whip: { leanDeg: 60 * random(), towardDeg: 359 * random() } }],
  });
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
      errorDeg: Math.abs(turnDeg(bearingDeg(at, tagAt), apparentDeg(waves))),
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

export type LineFigures = {
  readonly towardsLine: readonly boolean[];
  readonly withoutWires: readonly boolean[];
  readonly sideRight: readonly boolean[];
};

/** Bearings within 40 m of a line with the tag hidden, with the wires and without; and the two-sided test there. */
export function atLine(seed: number, count: number): LineFigures {
  const wired = ground(seed, true);
  const bareWorld = { ...wired.world, powerLines: [] };
  const bare = makeAirspace({ scenario: wired.scenario, world: bareWorld, tagIndex: 0, tagAt: wired.tagAt });
  const random = randomFor(`line-${seed}`, 'test');
  const [towardsLine, withoutWires, sideRight]: [boolean[], boolean[], boolean[]] = [[], [], []];
  const supports = wired.world.powerLines[0]?.supports ?? [];
  for (let tries = 0; supports.length > 2 && tries < 60 && towardsLine.length < count; tries++) {
    const i = Math.floor(random() * (supports.length - 1));
    const [a, b] = [supports[i]!.foot, supports[i + 1]!.foot];
    const share = random();
    const foot = { eM: a.eM + (b.eM - a.eM) * share, nM: a.nM + (b.nM - a.nM) * share };
    const along = bearingDeg(a, b);
    const offM = (random() < 0.5 ? -1 : 1) * (5 + 35 * random());
    const at = stepAlong(foot, along + 90, offM);
    const string = sightString(wired.world, { ...wired.tagAt, heightM: 0.5 }, { ...at, heightM: 1.7 });
    if (string.clear || at.eM < 5 || at.nM < 5 || at.eM > wired.world.sizeM - 5 || at.nM > wired.world.sizeM - 5) continue;
    const { waves } = wired.space.arrivalsAt(at, 1.7);
    const fromWires = waves.filter((w) => w.kind === 'wire' || w.kind === 'pole');
    if (fromWires.length === 0) continue;
    const strongest = fromWires.reduce((s, w) => (fieldSquared(w) > fieldSquared(s) ? w : s));
    const near = (heading: number) => Math.abs(turnDeg(strongest.azimuthDeg, heading)) <= 30;
    towardsLine.push(near(apparentDeg(waves)));
    withoutWires.push(near(apparentDeg(bare.arrivalsAt(at, 1.7).waves)));
    const level = (side: 1 | -1) => {
      const stand = stepAlong(foot, along + 90, side * 40);
      const hears = yagi.fan(wired.space.arrivalsAt(stand, 1.7).waves);
      // back to the wires: the antenna looks away from the line, a little to both sides
      return [-40, -20, 0, 20, 40].reduce((s, turn) => s + hears(along + 90 * side + turn, 0) + hears(along + 90 * side + turn, 90), 0);
    };
    const tagSide = Math.abs(turnDeg(along + 90, bearingDeg(foot, wired.tagAt))) < 90 ? 1 : -1;
    sideRight.push(level(tagSide) > level(tagSide === 1 ? -1 : 1));
  }
  return { towardsLine, withoutWires, sideRight };
}

if (process.argv[1]?.endsWith('phenomena.ts')) {
  const grounds = Number(process.argv[2] ?? 4);
  const each = Number(process.argv[3] ?? 40);
  const all = [...Array(grounds).keys()].flatMap((seed) => places(ground(seed), seed, each));
  const [seen, hidden] = [all.filter((p) => !p.hidden), all.filter((p) => p.hidden)];
  console.log(`places: ${all.length}, in view ${seen.length}, hidden ${hidden.length}`);
  console.log(
    `in view: median error ${median(seen.map((p) => p.errorDeg)).toFixed(1)} degrees, off by > 15 degrees ${(100 * share(seen.map((p) => p.errorDeg > 15))).toFixed(0)} %`,
  );
  console.log(
    `hidden: median error ${median(hidden.map((p) => p.errorDeg)).toFixed(1)} degrees, off by > 15 degrees ${(100 * share(hidden.map((p) => p.errorDeg > 15))).toFixed(0)} %`,
  );
  const stands = [...Array(grounds).keys()].map((seed) => crestsAndHollows(ground(seed), seed, 500));
  const [crests, hollows] = [stands.flatMap((s) => s.crests), stands.flatMap((s) => s.hollows)];
  console.log(
    `crests lose ${median(crests).toFixed(1)} dB, hollows ${median(hollows).toFixed(1)} dB in the median (${crests.length}, ${hollows.length} places)`,
  );
  const left = [...Array(2).keys()].flatMap((seed) => fadesLeft(ground(seed), seed, each));
  console.log(`woodland fades > 8 dB left within 2 m: ${(100 * share(left)).toFixed(0)} % of ${left.length}`);
  const lines = [...Array(grounds).keys()].map((seed) => atLine(seed, Math.ceil(each / 2)));
  const pick = (key: keyof LineFigures) => lines.flatMap((l) => l[key]);
  console.log(
    `beside a line, hidden: ${(100 * share(pick('towardsLine'))).toFixed(0)} % of ${pick('towardsLine').length} bearings within 30 degrees of its strongest point, ${(100 * share(pick('withoutWires'))).toFixed(0)} % without wires; two-sided test right ${(100 * share(pick('sideRight'))).toFixed(0)} %`,
  );
}
