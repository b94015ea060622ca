import type { Air } from '../listening/air';
import { keptBy } from '../listening/keptBy';
import { leastGainHere } from '../listening/leastGainHere';
import type { Picture, PictureMark, Spot } from '../listening/picture';
import { type Dial, FIRST_SETTINGS, GAIN, HEADING, onDial, type Settings } from '../listening/settings';
import { turnDeg, wrapBearingDeg } from '../units/angles';
import { type BounceScene, bounceScene, swingDeg, walkSpot } from './bounceScene';
import { drawn, whereReaches } from './drawn';
import { type Drill, planAround, type Trial } from './drill';
import { turnedAir, turnedSpot } from './turnedAir';

/** Flat, as the whip lies. */
const ROLL_DEG = 0;
const WALK_M = { from: 10, to: 170 } as const;
const WALK_STEPS = 5;
const ATTEMPTS = 60;
/** Both sides must be heard at both ends of the walk: no further apart than this, dB. */
const MOST_APART_DB = 9;

/** A side is where it ought to be, and the false one swings as heard, within so much. */
const SIDE_OFF_DEG = 15;
const LEAST_HEARD_SHARE = 0.6;

type Walked = { readonly scene: BounceScene; readonly walkM: number };

/** The loudest heading near a bearing; `null` where the ring has no peak of its own there. */
function peakNear(air: Air, deg: number): number | null {
  let best = deg;
  for (let off = -SIDE_OFF_DEG; off <= SIDE_OFF_DEG; off++)
    if (air.powerDbm(deg + off, ROLL_DEG) > air.powerDbm(best, ROLL_DEG)) best = deg + off;
  return Math.abs(best - deg) === SIDE_OFF_DEG ? null : best;
}

/** How much more the false side swings than the true one as they are heard, degrees; `null` where one of them is not to be found. */
function heardSwingDeg(scene: BounceScene, walkM: number): number | null {
  const [first, last] = [0, walkM].map((m) => {
    const sides = scene.sidesDeg(m);
    const air = scene.air(m);
    return { trueDeg: peakNear(air, Math.round(sides.trueDeg)), falseDeg: peakNear(air, Math.round(sides.falseDeg)) };
  }) as [Peaks, Peaks];
  if (first.trueDeg === null || first.falseDeg === null || last.trueDeg === null || last.falseDeg === null) return null;
  return Math.abs(turnDeg(first.falseDeg, last.falseDeg)) - Math.abs(turnDeg(first.trueDeg, last.trueDeg));
}
type Peaks = { readonly trueDeg: number | null; readonly falseDeg: number | null };

/** A scene and a walk over which the false side swings by `level` degrees more than the true one. */
function walkedScene(seed: string, level: number): Walked {
  for (let attempt = 1; attempt <= ATTEMPTS; attempt++) {
    const scene = bounceScene(drawn(seed, attempt), level);
    if (!scene || swingDeg(scene, WALK_M.to) < level) continue;
    const exactM = whereReaches(level, WALK_M.from, WALK_M.to, (m) => swingDeg(scene, m));
    const walkM = Math.max(WALK_STEPS, Math.round(exactM / WALK_STEPS) * WALK_STEPS);
    if ([0, walkM].some((m) => Math.abs(scene.falseLessTrueDb(m)) > MOST_APART_DB)) continue;
    const heardDeg = heardSwingDeg(scene, walkM);
    if (heardDeg !== null && heardDeg >= LEAST_HEARD_SHARE * level) return { scene, walkM };
  }
  throw new RangeError(`no hillside could be drawn from ${seed} that swings by ${level} degrees`);
}

function draw(seed: string, level: number): Trial {
  const by = drawn(seed);
  const { scene, walkM } = walkedScene(seed, level);
  const northDeg = by.bearingDeg();
  const air = keptBy(
    (settings) => settings.walkM,
    (settings) => turnedAir(scene.air(settings.walkM), northDeg),
  );
  const trueFirst = by.side() > 0;
  const { trueDeg, falseDeg } = scene.sidesDeg(0);
  const [a, b] = (trueFirst ? [trueDeg, falseDeg] : [falseDeg, trueDeg]).map((deg) => Math.round(wrapBearingDeg(deg + northDeg)));
  const walk: Dial = { key: 'walkM', name: 'Walked', from: 0, to: walkM, step: walkM / WALK_STEPS, unit: 'm' };
  const begun: Settings = { ...FIRST_SETTINGS, headingDeg: a!, rollDeg: ROLL_DEG, walkM: 0 };
  const leastDb = leastGainHere(air(begun)) ?? 70;
  const start = { ...begun, gainDb: onDial(GAIN, leastDb + by.between(12, 20)) };
  const right = trueFirst ? 0 : 1;
  const end = scene.sidesDeg(walkM);
  const [swung, stayed] = [turnDeg(falseDeg, end.falseDeg), turnDeg(trueDeg, end.trueDeg)].map((deg) => Math.round(Math.abs(deg)));
  const spot = (at: Spot): Spot => turnedSpot(at, northDeg);
  const track = (settings: Settings): readonly PictureMark[] => [
    { kind: 'edge', points: [spot(walkSpot(scene, 0)), spot(walkSpot(scene, walkM))] },
    { kind: 'you', at: spot(walkSpot(scene, 0)), now: false },
    { kind: 'you', at: spot(walkSpot(scene, settings.walkM)), now: true },
  ];
  const over = { ...start, walkM, headingDeg: Math.round(wrapBearingDeg(scene.sidesDeg(walkM).trueDeg + northDeg)) };
  return {
    level: swingDeg(scene, walkM),
    ask: `Two loud sides, A and B: one is a hillside’s. Walk up to ${walkM} m and find which stays.`,
    hint: 'Point at A and at B until you know their headings by ear. Walk to the end and find both again: the one that moved more is the hillside.',
    start,
    dials: [HEADING, GAIN, walk],
    marks: () => [
      { name: 'A', deg: a! },
      { name: 'B', deg: b! },
    ],
    plan: (settings) => planAround(1.3 * walkM, `Plan: ${settings.walkM} of ${walkM} metres walked.`, track(settings)),
    air,
    answer: { kind: 'choice', choices: ['A is true', 'B is true'] },
    judge(answer) {
      const ok = answer.kind === 'choice' && answer.choice === right;
      return {
        right: ok,
        error: ok ? 0 : 1,
        because: `${right === 0 ? 'B' : 'A'} was the hillside`,
      };
    },
    truth: {
      settings: over,
      said: `Over ${walkM} m the hillside swung by ${swung}°, the transmitter by ${stayed}°.`,
      picture: bounceFromAbove(scene, spot, track(over)),
    },
  };
}

function bounceFromAbove(scene: BounceScene, spot: (at: Spot) => Spot, track: readonly PictureMark[]): Picture {
  const you = track.at(-1)!;
  const at: Spot = you.kind === 'you' ? you.at : [0, 0];
  const [tag, shine] = [spot(scene.tagSpot), spot(scene.shineSpot)];
  return planAround(1.1 * Math.hypot(...scene.tagSpot), 'Plan: the direct wave over the ridge, and the one by way of the hillside.', [
    ...track.slice(0, -1),
    { kind: 'wave', points: [tag, at], wave: 'direct', strength: 1 },
    { kind: 'wave', points: [tag, shine, at], wave: 'hillside', strength: 0.9 },
    { kind: 'words', at: shine, text: 'hillside' },
    { kind: 'tag', at: tag },
    you,
  ]);
}

export const trueOrBounce: Drill = {
  id: 'true-or-bounce',
  title: 'True or bounce',
  skill: 'walk on and find which loud side stays',
  unit: '°',
  measures: 'of swing told apart',
  ladder: { hardest: 8, easiest: 40, first: 26, step: 1.35, ratio: true },
  kind: 'choose',
  guess: 0.5,
  trials: 4,
  example: [
    'Two sides are loud, marked A and B where they are now. One is the transmitter far off, one a hillside close by.',
    'Loudness does not tell them apart. Find the middle of each and keep the headings in mind.',
    'Walk on to the end of the line. Find both middles again.',
    'What is far away stays where it is; the near hillside swings. The one that moved less is true.',
  ],
  draw,
  says: (number) =>
    `You tell true from bounce when the false side swings by ${number.toFixed(0)}°. ${
      number <= 15
        ? 'Fifty metres of walk are mostly enough for you.'
        : 'Walk further before you judge, and take both bearings by their edges.'
    }`,
};
