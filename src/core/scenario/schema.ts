import './withoutEval';
import { z } from 'zod';

/** The present version of the scenario format. Older files are lifted by `migrations.ts`. */
export const SCENARIO_VERSION = 1;

export const RELIEF_STYLES = ['ridged', 'smooth', 'plateau', 'dale', 'coast', 'fen'] as const;
export const ANTENNA_IDS = ['yagi3', 'yagi2', 'phased2', 'yagi5', 'loop', 'whip'] as const;
/** What can cover the ground by rule or by hand. */
export const COVER_NAMES = ['open', 'wood', 'scrub', 'wet', 'water', 'rock'] as const;
export const GROUND_CLASSES = ['very-dry', 'medium-dry', 'wet', 'fresh-water'] as const;
export const NOISE_CLASSES = ['city', 'residential', 'rural', 'quiet-rural'] as const;
export const LESSONS = [
  'quiet-gain',
  'back-signal',
  'axis',
  'bounce',
  'wires',
  'clear-view',
  'crossing',
  'moving',
  'several',
  'night',
  'close-in',
  'search',
] as const;
export const CAUTIONS = ['wires', 'heights', 'water', 'roads', 'weather', 'alone', 'land', 'hearing'] as const;

/** When the debrief shows the steady walker's run as the learner's companion: at once, or once the learner has seen the own run. */
export const COMPANIONS = ['beside', 'afterwards'] as const;

const text = (longest: number) => z.string().trim().min(1).max(longest);
const between = (least: number, most: number) => z.number().min(least).max(most);
const share = between(0, 1);
/** East, north in metres from the south-west corner of the map. */
const place = z.tuple([between(0, 10_000), between(0, 10_000)]);

const towerLine = z.strictObject({
  voltage: z.enum(['low', 'medium', 'high']),
  /** Two or more corners of the line, supports are set between them. */
  route: z.array(place).min(2).max(12),
  spanM: between(30, 450),
  supportHeightM: between(6, 60),
  wireHeightM: between(5, 55),
  conductors: z.int().min(1).max(6),
});

/** Heights from an elevation file in place of the drawn relief, packed as `ownHeights.ts` says. */
const ownHeights = z.strictObject({
  lowM: between(-500, 9_000),
  stepM: between(0.1, 1),
  packed: z
    .string()
    .min(1)
    .max(1_600_000)
    .regex(/^[A-Za-z0-9_-]+$/),
  /** Where the heights come from and under what terms they may be handed on. */
  source: text(160),
});

/** Cover over the drawn one wherever a cell fits all that the rule asks for. */
const coverRule = z.strictObject({
  cover: z.enum(COVER_NAMES),
  /** Metres above sea level. */
  aboveM: between(-500, 9_000).optional(),
  belowM: between(-500, 9_000).optional(),
  /** Rise over run, percent: 100 is 45 degrees. */
  steeperPercent: between(0, 400).optional(),
  flatterPercent: between(0, 400).optional(),
});

const ground = z.strictObject({
  sizeM: between(1_000, 10_000),
  cellM: between(5, 20),
  relief: z.strictObject({ style: z.enum(RELIEF_STYLES), strengthM: between(0, 600), roughness: share, baseHeightM: between(0, 1_500) }),
  /** Left out: the relief is drawn by chance. */
  own: ownHeights.optional(),
  cover: z.strictObject({ wood: between(0, 0.9), scrub: between(0, 0.6), wet: between(0, 0.6), rock: between(0, 0.4) }),
  /** One after the other, each over the ones before. Left out: the drawn cover stays. */
  coverRules: z.array(coverRule).max(8).optional(),
  /** Cover set by hand, over all else; an outline is closed by itself. */
  patches: z
    .array(z.strictObject({ cover: z.enum(COVER_NAMES), outline: z.array(place).min(3).max(24) }))
    .max(40)
    .optional(),
  water: z.strictObject({ lakes: z.int().min(0).max(6), streams: z.int().min(0).max(12) }),
  tracks: z.int().min(0).max(8),
  farms: z.int().min(0).max(8),
  hamlets: z.int().min(0).max(3),
  fieldWalls: z.boolean(),
  powerLines: z.array(towerLine).max(4),
  /** Buildings set by hand: centre, length and width, bearing of the long side, height, what the walls are of. */
  buildings: z
    .array(
      z.strictObject({
        at: place,
        lengthM: between(2, 80),
        widthM: between(2, 60),
        alongDeg: between(0, 359.99),
        heightM: between(2, 30),
        walls: z.enum(['stone', 'metal']),
        /** Its flat roof, or the tower that it is, may be climbed. Left out: it may not. */
        climb: z.literal(true).optional(),
      }),
    )
    .max(40),
});

const movement = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('stays') }),
  z.strictObject({ kind: z.literal('path'), points: z.array(place).min(2).max(40), speedMPerS: between(0.05, 5), pauseS: between(0, 600) }),
  z.strictObject({ kind: z.literal('wanders'), withinM: between(5, 1_500), speedMPerS: between(0.05, 3), restS: between(0, 900) }),
]);

const tag = z.strictObject({
  name: text(40),
  at: place,
  frequencyMHz: between(30, 500),
  eirpDbm: between(-40, 30),
  pulseMs: between(8, 60),
  pulsesPerMinute: between(20, 120),
  heightM: between(0.02, 30),
  /** Where the whip points: bearing, and how far it leans from upright (90 is lying). */
  whip: z.strictObject({ leanDeg: between(0, 90), towardDeg: between(0, 359.99) }),
  movement,
  driftHzPerHour: between(-2_000, 2_000),
  decayDbPerHour: between(0, 20),
});

const kit = z.strictObject({
  antennas: z.array(z.enum(ANTENNA_IDS)).min(1).max(6),
  startAntenna: z.enum(ANTENNA_IDS),
  /** Frequency that the antennas of this kit were cut for, MHz. */
  designMHz: between(30, 500),
  startGainDb: between(0, 90),
  startAttenuatorDb: z.union([z.literal(0), z.literal(10), z.literal(20), z.literal(30)]),
  /** How far the dial is off the first tag's clearest note at the start. */
  startOffsetHz: between(-3_000, 3_000),
  noiseFigureDb: between(1, 12),
});

const aids = z.strictObject({
  ownPosition: z.boolean(),
  sMeter: z.boolean(),
  compass: z.boolean(),
  fix: z.boolean(),
  soundRing: z.boolean(),
});

const tagNumber = z.int().min(0).max(7);

/** What is asked of the learner. */
const task = z.discriminatedUnion('kind', [
  /** Walk to a tag and say "here". `tag` is its number in the list, from 0: only there a find counts. Left out: any tag counts. */
  z.strictObject({ kind: z.literal('find'), tag: tagNumber.optional() }),
  /** Say where the tag is by the fix from marked bearings. Whoever comes nearer than `keepAwayM` has ended the run; left out: no bound. */
  z.strictObject({ kind: z.literal('fix'), tag: tagNumber.optional(), keepAwayM: between(50, 3_000).optional() }),
]);

/** What is done before the next text comes, counted from the text before it. */
const stageDone = z.discriminatedUnion('kind', [
  /** So many bearings marked, those that were struck out not counted. */
  z.strictObject({ kind: z.literal('bearings'), count: z.int().min(1).max(20) }),
  /** A guess pin set. */
  z.strictObject({ kind: z.literal('pin') }),
  /** Out of the vehicle, having driven. */
  z.strictObject({ kind: z.literal('on-foot') }),
  z.strictObject({ kind: z.literal('reached'), at: place, withinM: between(10, 1_000) }),
  z.strictObject({ kind: z.literal('walked'), m: between(10, 20_000) }),
  z.strictObject({ kind: z.literal('time'), s: between(10, 7_200) }),
]);

const stage = z.strictObject({
  after: stageDone,
  text: text(400),
  /** The vehicle drives off with this text; the rest is on foot. Left out: it stays. */
  vehicleGoes: z.literal(true).optional(),
});

const weight = between(0, 4);

export const scenarioSchema = z.strictObject({
  format: z.literal('faintward-scenario'),
  version: z.literal(SCENARIO_VERSION),
  title: text(60),
  brief: text(600),
  author: text(60),
  lesson: z.enum(LESSONS),
  level: z.int().min(1).max(5),
  seed: text(40),
  ground,
  radio: z.strictObject({
    groundClass: z.enum(GROUND_CLASSES),
    noise: z.enum(NOISE_CLASSES),
    lineNoiseDb: between(-40, 40),
    mainsHz: z.union([z.literal(50), z.literal(60)]),
    /** What the wave that runs along a power line loses, dB per 100 m. Left out: 3, our assumption (see `guidedLossOf`). */
    guidedDbPer100M: between(0.2, 30).optional(),
  }),
  tags: z.array(tag).min(1).max(8),
  kit,
  start: z.strictObject({ at: place, facingDeg: between(0, 359.99) }),
  aids,
  limits: z.strictObject({
    timeS: between(60, 14_400),
    /** Metres that may be walked; the run ends with them. Left out: as far as one likes. */
    walkM: between(100, 40_000).optional(),
    paceMPerS: between(0.5, 4),
    vehicle: z.boolean(),
    /** A find counts within this distance of the tag. */
    findWithinM: between(1, 60),
  }),
  /** Left out: find a tag, whichever. */
  task: task.optional(),
  /** Texts that come on the way, in this order; the run rests while one is read. Left out: the brief is all. */
  stages: z.array(stage).min(1).max(8).optional(),
  /** The steady walker's run in the debrief. Left out: it walks only when it is sent. */
  companion: z.enum(COMPANIONS).optional(),
  /** Asks for the tag check before leaving; the debrief says what was left out. Left out: it is not asked for. */
  tagCheck: z.literal(true).optional(),
  weights: z.strictObject({ quietGain: weight, setThenSweep: weight, walkAndListen: weight, clearView: weight }),
  cautions: z.array(z.enum(CAUTIONS)).max(8),
  /** Seconds in which the steady walker finds the first tag, the median of its rehearsals; left out where nobody rehearsed. */
  parS: between(1, 14_400).optional(),
});

export type Scenario = z.infer<typeof scenarioSchema>;
export type GroundPlan = Scenario['ground'];
export type LinePlan = GroundPlan['powerLines'][number];
export type CoverName = (typeof COVER_NAMES)[number];
export type CoverRule = NonNullable<GroundPlan['coverRules']>[number];
export type Tag = Scenario['tags'][number];
export type AntennaId = (typeof ANTENNA_IDS)[number];
export type GroundClassId = (typeof GROUND_CLASSES)[number];
export type NoiseClassId = (typeof NOISE_CLASSES)[number];
export type Caution = (typeof CAUTIONS)[number];
