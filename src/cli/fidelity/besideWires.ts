import { type Airspace, makeAirspace } from '../../core/radio/arrivals';
import { directWave } from '../../core/radio/directWave';
import type { Wave } from '../../core/radio/wave';
import { fieldSquared } from '../../core/radio/waveVector';
import { randomFor } from '../../core/random/draw';
import type { Scenario } from '../../core/scenario/schema';
import { turnDeg } from '../../core/units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../../core/units/frames';
import { generateWorld } from '../../core/world/generate';
import type { World } from '../../core/world/world';
import { drawnGround } from './drawnGround';
import { loudest, yagi } from './loudest';

const SIZE_M = 2_400;

/** A ground with a high line across it and a tag to one side, its whip drawn evenly over all directions. */
export type LineGround = {
  readonly scenario: Scenario;
  readonly world: World;
  readonly tagAt: MapPoint;
  readonly from: MapPoint;
  readonly lengthM: number;
  readonly alongDeg: number;
  readonly wired: Airspace;
  readonly bare: Airspace;
};

export function lineGround(seed: number, style: 'ridged' | 'plateau' = 'ridged', strengthM = 180): LineGround {
  const random = randomFor(`line-ground-${seed}`, 'test');
  const alongDeg = 360 * random();
  const middle = { eM: SIZE_M / 2, nM: SIZE_M / 2 };
  const [from, to] = [stepAlong(middle, alongDeg + 180, 1_150), stepAlong(middle, alongDeg, 1_150)];
  const aside = (random() < 0.5 ? 1 : -1) * (300 + 700 * random());
  const tagAt = stepAlong(stepAlong(middle, alongDeg + 90, aside), alongDeg, 800 * (random() - 0.5));
  const whip = { leanDeg: (Math.acos(random()) * 180) / Math.PI, towardDeg: 359 * random() };
  const route: [number, number][] = [
    [from.eM, from.nM],
    [to.eM, to.nM],
  ];
  const line = { voltage: 'high', route, spanM: 250, supportHeightM: 45, wireHeightM: 32, conductors: 6 } as const;
  const relief = { style, strengthM, roughness: 0.5, baseHeightM: 220 };
  const scenario = drawnGround(
    `line-ground-${seed}`,
    { sizeM: SIZE_M, relief, farms: 0, buildings: [], powerLines: [line] },
    { at: [tagAt.eM, tagAt.nM], whip },
  );
  const world = generateWorld(scenario);
  const wired = makeAirspace({ scenario, world, tagIndex: 0, tagAt });
  const bare = makeAirspace({ scenario, world: { ...world, powerLines: [] }, tagIndex: 0, tagAt });
  return { scenario, world, tagAt, from, lengthM: 2_300, alongDeg, wired, bare };
}

/** A stand beside the line: what the headings there do, with the wires and without. */
export type Stand = {
  readonly footM: number;
  readonly hidden: boolean;
  readonly leanDeg: number;
  /** Light on the wires over that at the walker, and the line's waves over all others, dB. */
  readonly litOverDb: number;
  readonly lineOverRestDb: number;
  readonly gathers: boolean;
  readonly gathersBare: boolean;
};

const powerOf = (waves: readonly Wave[]): number => waves.reduce((sum, w) => sum + fieldSquared(w), 1e-40);
const isLine = (w: Wave): boolean => w.kind === 'wire' || w.kind === 'pole';

/** Stands 20 to 40 m from the line, at whole tens of degrees from the tag so that they share radials. */
export function standsOf(ground: LineGround, seed: number, everyM = 12): readonly Stand[] {
  const { scenario, world, tagAt, from, lengthM, alongDeg, wired, bare } = ground;
  const random = randomFor(`stands-${seed}`, 'test');
  const site = { scenario, world, tagIndex: 0, tagAt, field: wired.field };
  const stands: Stand[] = [];
  for (let x = 40; x < lengthM - 40; x += everyM) {
    const foot = stepAlong(from, alongDeg, x);
    const beside = stepAlong(foot, alongDeg + 90, (random() < 0.5 ? -1 : 1) * (20 + 20 * random()));
    const d = distanceM(beside, tagAt);
    const azimuth = 5 * Math.round(bearingDeg(tagAt, beside) / 5);
    if (d > 1_500 || Math.abs(turnDeg(azimuth, bearingDeg(tagAt, beside))) * d > 300) continue;
    const at = stepAlong(tagAt, azimuth, d);
    const direct = directWave(site, at, 1.7);
    const { waves } = wired.arrivalsAt(at, 1.7);
    const lines = waves.filter(isLine);
    if (lines.length === 0) continue;
    for (const radial of wired.field.known()) bare.field.put(radial);
    const strongest = lines.reduce((best, w) => (fieldSquared(w) > fieldSquared(best) ? w : best));
    const near = (heading: number) => Math.abs(turnDeg(strongest.azimuthDeg, heading)) <= 30;
    stands.push({
      footM: x,
      hidden: !direct.string.clear,
      leanDeg: scenario.tags[0]!.whip.leanDeg,
      litOverDb: 10 * Math.log10(fieldSquared(directWave(site, foot, 32, true).wave) / fieldSquared(direct.wave)),
      lineOverRestDb: 10 * Math.log10(powerOf(lines) / powerOf(waves.filter((w) => !isLine(w)))),
      gathers: near(loudest(waves).headingDeg),
      gathersBare: near(loudest(bare.arrivalsAt(at, 1.7).waves).headingDeg),
    });
  }
  return stands;
}

/** Headings tried with one's back to the wires, from straight away, and how far the three stands are apart along the line, metres. */
const TURNS_DEG = [-60, -40, -20, 0, 20, 40, 60];
const STEPS_M = [-4, 0, 4];

/** Back to the wires: the loudest of the half before one, flat or upright, in the middle one of three stands a few steps apart. */
function backToWires({ from, alongDeg, wired }: LineGround, footM: number, side: 1 | -1, asideM: number): number {
  const levels = STEPS_M.map((stepM) => {
    const stand = stepAlong(stepAlong(from, alongDeg, footM + stepM), alongDeg + 90, side * asideM);
    const hears = yagi.fan(wired.arrivalsAt(stand, 1.7).waves);
    return Math.max(...TURNS_DEG.flatMap((turn) => [0, 90].map((roll) => hears(alongDeg + 90 * side + turn, roll))));
  });
  return levels.sort((a, b) => a - b)[1]!;
}

/** One two-sided test: whether the tag's side was the louder one, and how far the line's waves stood over the direct one on that side, dB. */
export type SideTest = { readonly right: boolean; readonly hidden: boolean; readonly lineOverDirectDb: number };

/** The two-sided test at a place along the line: is the tag's side the louder one at the same gain? */
function sideTest(ground: LineGround, footM: number, asideM: number): SideTest {
  const { scenario, world, tagAt, alongDeg, wired } = ground;
  const foot = stepAlong(ground.from, alongDeg, footM);
  const tagSide = Math.abs(turnDeg(alongDeg + 90, bearingDeg(foot, tagAt))) < 90 ? 1 : -1;
  const stand = stepAlong(foot, alongDeg + 90, tagSide * asideM);
  const direct = directWave({ scenario, world, tagIndex: 0, tagAt, field: wired.field }, stand, 1.7);
  return {
    right: backToWires(ground, footM, tagSide, asideM) > backToWires(ground, footM, tagSide === 1 ? -1 : 1, asideM),
    hidden: !direct.string.clear,
    lineOverDirectDb: 10 * Math.log10(powerOf(wired.arrivalsAt(stand, 1.7).waves.filter(isLine)) / fieldSquared(direct.wave)),
  };
}

/** The two-sided test 25 m from the wires at places along the line within 1500 m of the tag. */
export function twoSidedTests(ground: LineGround, everyM: number): readonly SideTest[] {
  const out: SideTest[] = [];
  for (let x = 80; x < ground.lengthM - 80; x += everyM)
    if (distanceM(stepAlong(ground.from, ground.alongDeg, x), ground.tagAt) < 1_500) out.push(sideTest(ground, x, 25));
  return out;
}
