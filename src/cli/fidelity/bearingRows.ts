import { randomFor } from '../../core/random/draw';
import { openExercise } from '../../core/run/exercise';
import type { Scenario } from '../../core/scenario/schema';
import { stepAlong } from '../../core/units/frames';
import { drawnGround } from './drawnGround';
import { type Post, postAt, twoEdgesErrorDeg, twoNullsErrorDeg } from './edgesByEar';
import { once } from './once';
import type { CheckRow } from './row';

const SPRINGER = 'Springer 1979';
const TAG = { eM: 500, nM: 500 };
const FLAT: Partial<Scenario['ground']> = {
  sizeM: 1_000,
  relief: { style: 'smooth', strengthM: 0, roughness: 0, baseHeightM: 100 },
  cover: { wood: 0, scrub: 0, wet: 0, rock: 0 },
  water: { lakes: 0, streams: 0 },
  tracks: 0,
  farms: 0,
  fieldWalls: false,
  buildings: [],
};

/** 36 places 300 m round a tag on open ground, 28 bearings from each, the gain 10 dB over least gain. */
const PLACES = 36;
const BEARINGS = 28;
const FAR_M = 300;
const EXCESS_DB = 10;

type WhipToward = (placeDeg: number) => { readonly leanDeg: number; readonly towardDeg: number };

/** Errors of bearings over open ground, degrees; the whip as it lies for each place. */
function openErrorsDeg(whip: WhipToward, errorDeg: (post: Post, random: () => number) => number): readonly number[] {
  const random = randomFor('open bearings', 'test');
  return Array.from({ length: PLACES }, (_, i) => (360 / PLACES) * i).flatMap((deg) => {
    const exercise = openExercise(drawnGround('open', FLAT, { at: [TAG.eM, TAG.nM], whip: whip(deg) }));
    const post = postAt(exercise, 0, stepAlong(TAG, deg, FAR_M), EXCESS_DB)!;
    return Array.from({ length: BEARINGS }, () => errorDeg(post, random));
  });
}

const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
const deviation = (list: readonly number[]): number => Math.sqrt(mean(list.map((value) => (value - mean(list)) ** 2)));

const byEdges = once(() => openErrorsDeg(() => ({ leanDeg: 0, towardDeg: 0 }), twoEdgesErrorDeg));
/** A whip lying across the way to the listener, the antenna flat: the nulls are then at the ends of its rods. */
const byNulls = once(() => openErrorsDeg((deg) => ({ leanDeg: 90, towardDeg: (deg + 90) % 360 }), twoNullsErrorDeg));

/** Grassland with little wood, and where the two tags lie: one as a collar is worn, one small and on the ground. */
const GRASSLAND: Partial<Scenario['ground']> = {
  relief: { style: 'smooth', strengthM: 40, roughness: 0.4, baseHeightM: 220 },
  cover: { wood: 0.05, scrub: 0.05, wet: 0.03, rock: 0 },
};
const WORN = { heightM: 0.8, eirpDbm: 10, leanDeg: 20 } as const;
const ON_THE_GROUND = { heightM: 0.1, eirpDbm: -10, leanDeg: 80 } as const;
const GRASSLANDS = 12;
const GRASSLAND_FAR_M = 900;

/** Two tags at one place of a grassland; bearings from 18 places round it where both are heard. */
function grasslandErrorsDeg(seed: number): readonly (readonly [number, number])[] {
  const random = randomFor(`low-${seed}`, 'test');
  const at: [number, number] = [1_200 + 600 * random(), 1_200 + 600 * random()];
  const { tags, ...rest } = drawnGround(`low-${seed}`, GRASSLAND, { at });
  const both = [WORN, ON_THE_GROUND].map(({ heightM, eirpDbm, leanDeg }) => ({
    ...tags[0]!,
    name: `${heightM} m`,
    heightM,
    eirpDbm,
    whip: { leanDeg, towardDeg: 359 * random() },
  }));
  const exercise = openExercise({ ...rest, tags: both });
  return Array.from({ length: 18 }, (_, i) => stepAlong({ eM: at[0], nM: at[1] }, 20 * i, GRASSLAND_FAR_M)).flatMap((from) => {
    const [worn, low] = [postAt(exercise, 0, from, EXCESS_DB), postAt(exercise, 1, from, EXCESS_DB)];
    if (!worn || !low) return [];
    const off = (post: Post) => Math.abs(twoEdgesErrorDeg(post, random));
    return Array.from({ length: 4 }, () => [off(worn), off(low)] as const);
  });
}

const grassland = once(() => {
  const pairs = Array.from({ length: GRASSLANDS }, (_, seed) => grasslandErrorsDeg(seed)).flat();
  return { wornDeg: mean(pairs.map(([worn]) => worn)), lowDeg: mean(pairs.map(([, low]) => low)) };
});

/** Bearings by ear: the chance to hear each pulse is the ear's, the hand turns as hands do. */
export const bearingRows: readonly CheckRow[] = [
  {
    claim: '1,008 bearings by two edges over open ground, three-element Yagi, 10 dB over least gain: deviation 3 to 5 degrees',
    unit: 'degrees',
    value: () => deviation(byEdges()),
    reference: 4,
    tolerance: 1,
    mark: 'P',
    source: `${SPRINGER}: 3.9 degrees`,
  },
  {
    claim: 'the same: bias at most 0.5 degrees',
    unit: 'degrees',
    value: () => mean(byEdges()),
    reference: 0,
    tolerance: 0.5,
    mark: 'P',
    source: `${SPRINGER}: 0.2 degrees`,
  },
  {
    claim: '1,008 bearings by the mean of two nulls over open ground, whip and antenna flat: deviation 1 to 2.5 degrees',
    unit: 'degrees',
    value: () => deviation(byNulls()),
    reference: 1.75,
    tolerance: 0.75,
    mark: 'P',
    source: `${SPRINGER}: 1.1 degrees`,
  },
  {
    claim:
      'mean bearing error 900 m off over 12 grasslands, 0.1 mW lying 0.1 m over the ground against 10 mW worn at 0.8 m: 1.5 to 2.5 times',
    unit: 'times',
    value: () => grassland().lowDeg / grassland().wornDeg,
    reference: 2,
    tolerance: 0.5,
    mark: 'P',
    source: 'Grovenburg 2013: 9.9 against 4.9 degrees; power, height and lie of the whip are ours',
  },
];
