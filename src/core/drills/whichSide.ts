import { USUAL_LISTENER } from '../ear/loudness';
import { type Air, heardAt, makeAir, TAG_MHZ } from '../listening/air';
import type { Picture, PictureMark, Spot } from '../listening/picture';
import { type Dial, FIRST_SETTINGS, GAIN, HEADING, onDial, type Settings } from '../listening/settings';
import { CHEST_M, makeSmallScene } from '../listening/smallScene';
import { towerLine } from '../listening/towerLine';
import { GROUND, permittivity } from '../radio/ground';
import { litLines } from '../radio/litLine';
import { lineEchoes } from '../radio/powerLineEcho';
import { wrapBearingDeg } from '../units/angles';
import { type Drawn, drawn, whereReaches } from './drawn';
import { type Drill, planAround, type Trial } from './drill';
import { EIRP_DBM, leastUpright } from './plainView';
import { turnedAir, turnedSpot } from './turnedAir';

const SIZE_M = 1_200;
const MIDDLE_M = 600;
const LINE_N_M = 400;
const TOWERS_M = [-240, -120, 0, 120, 240] as const;
/** Of at most so many drawn situations the one whose sides differ most nearly by what is asked for; near enough ends the search. */
const CANDIDATES = 8;
const NEAR_ENOUGH_DB = 0.6;
/** The lean that makes the difference asked for is looked for to a degree. */
const LEAN_HALVINGS = 6;
/** Less than this and the test itself would tell nothing, dB. */
const LEAST_GAP_DB = 1;

type Side = 'tag' | 'far';
type LineScene = {
  readonly asideM: number;
  readonly rollDeg: 0 | 90;
  readonly tagM: Spot;
  readonly air: Readonly<Record<Side, Air>>;
  /** Back to the wires: the tag's side less the far one, dB before the limiter. */
  readonly gapDb: number;
};

/** A tag over level ground north of a line that runs from west to east; seen from both sides of it. */
function lineScene(by: Drawn, level: number): LineScene {
  const asideM = by.between(25, 42);
  const shiftM = by.between(-60, 60);
  const rollDeg = by.oneOf([0, 0, 90] as const);
  const tag = { eM: MIDDLE_M + by.between(-110, 110), nM: LINE_N_M + by.between(140, 430) };
  const powerLines = [
    towerLine({
      towersM: TOWERS_M.map((m) => MIDDLE_M + m + shiftM),
      lineNM: LINE_N_M,
      towerHeightM: by.between(26, 36),
      wireHeightM: by.between(19, 26),
    }),
  ];
  const [heightM, towardDeg] = [by.between(0.5, 4), by.bearingDeg()];
  const whenLeaning = (leanDeg: number) => {
    const scene = makeSmallScene({ sizeM: SIZE_M, cellM: 20, tag: { at: tag, heightM, leanDeg, towardDeg }, powerLines });
    const lit = litLines(scene.site);
    const airAt = (nM: number): Air => {
      const at = { eM: MIDDLE_M, nM };
      const receiver = [at.eM, at.nM, 100 + CHEST_M] as const;
      const echoes = lineEchoes(lit, { world: scene.world, receiver, frequencyMHz: TAG_MHZ, eps: permittivity(GROUND.wet, TAG_MHZ) });
      return makeAir({ waves: [scene.direct(at), ...echoes], eirpDbm: EIRP_DBM });
    };
    const air = { tag: airAt(LINE_N_M + asideM), far: airAt(LINE_N_M - asideM) };
    return { air, gapDb: air.tag.powerDbm(0, rollDeg) - air.far.powerDbm(180, rollDeg) };
  };
  // Held flat, a nearly upright whip is the weak part and the wires the strong one: the hard cases. Held upright, a lying whip.
  const [fromDeg, toDeg] = rollDeg === 0 ? [4, 62] : [88, 68];
  const leanDeg = whereReaches(level, fromDeg, toDeg, (deg) => whenLeaning(deg).gapDb, LEAN_HALVINGS);
  return { asideM, rollDeg, tagM: [tag.eM - MIDDLE_M, tag.nM - LINE_N_M], ...whenLeaning(leanDeg) };
}

/** The drawn situation whose sides differ most nearly by `level`. */
function nearestScene(seed: string, level: number): LineScene {
  let best: LineScene | null = null;
  for (let attempt = 1; attempt <= 3 * CANDIDATES; attempt++) {
    if (best && (attempt > CANDIDATES || Math.abs(best.gapDb - level) < NEAR_ENOUGH_DB)) break;
    const scene = lineScene(drawn(seed, attempt), level);
    if (scene.gapDb < LEAST_GAP_DB) continue;
    if (!best || Math.abs(scene.gapDb - level) < Math.abs(best.gapDb - level)) best = scene;
  }
  if (!best) throw new RangeError(`no situation beside wires could be drawn from ${seed}`);
  return best;
}

const SIDES = ['this side', 'across'] as const;

function draw(seed: string, level: number): Trial {
  const by = drawn(seed);
  const scene = nearestScene(seed, level);
  const turnDeg = by.bearingDeg();
  const tagOnThisSide = by.side() > 0;
  const sideOf = ({ walkM }: Settings): Side => ((walkM === 0) === tagOnThisSide ? 'tag' : 'far');
  const airs = { tag: turnedAir(scene.air.tag, turnDeg), far: turnedAir(scene.air.far, turnDeg) };
  const air = (settings: Settings) => airs[sideOf(settings)];
  const awayDeg = (settings: Settings) => wrapBearingDeg(turnDeg + (sideOf(settings) === 'tag' ? 0 : 180));
  const crossM = Math.round(2 * scene.asideM);
  const walk: Dial = { key: 'walkM', name: 'You stand', from: 0, to: crossM, step: crossM, unit: 'm', choices: SIDES };
  const begun: Settings = { ...FIRST_SETTINGS, rollDeg: scene.rollDeg, walkM: 0 };
  const leastHereDb = leastBackToWires(scene.air[sideOf(begun)], sideOf(begun) === 'tag' ? 0 : 180, scene.rollDeg);
  const start: Settings = {
    ...begun,
    headingDeg: wrapBearingDeg(awayDeg(begun) + 180),
    gainDb: onDial(GAIN, leastHereDb + by.between(26, 44)),
  };
  const right = tagOnThisSide ? 0 : 1;
  const spotOf = (settings: Settings): Spot => turnedSpot([0, sideOf(settings) === 'tag' ? scene.asideM : -scene.asideM], turnDeg);
  return {
    level: scene.gapDb,
    ask: 'Near the wires everything points at them. On which side of the line is the transmitter?',
    hint: 'Back to the wires, gain down until you just hear it. Then across, back to the wires again, the same gain: louder, or gone?',
    start,
    dials: [HEADING, GAIN, walk],
    allowed: (before, wanted) => (before.walkM !== 0 || wanted.walkM !== 0 ? { ...wanted, gainDb: before.gainDb } : wanted),
    marks: (settings) => [
      { name: 'wires', deg: wrapBearingDeg(awayDeg(settings) + 180) },
      { name: 'away', deg: awayDeg(settings) },
    ],
    plan: (settings) => lineFromAbove(scene, turnDeg, spotOf(settings), []),
    air,
    answer: { kind: 'choice', choices: ['This side', 'Across the line'] },
    judge(answer) {
      const ok = answer.kind === 'choice' && answer.choice === right;
      const side = right === 0 ? 'on the side where you began' : 'across the line';
      return { right: ok, error: ok ? 0 : 1, because: `It was ${side}` };
    },
    truth: {
      settings: {
        ...start,
        walkM: right === 0 ? 0 : crossM,
        headingDeg: Math.round(awayDeg({ ...start, walkM: right === 0 ? 0 : crossM })),
      },
      said: `Back to the wires, its own side was ${scene.gapDb.toFixed(1)} dB stronger.`,
      picture: lineFromAbove(scene, turnDeg, spotOf({ ...start, walkM: right === 0 ? 0 : crossM }), [
        {
          kind: 'wave',
          points: [turnedSpot(scene.tagM, turnDeg), spotOf({ ...start, walkM: right === 0 ? 0 : crossM })],
          wave: 'direct',
          strength: 1,
        },
        { kind: 'tag', at: turnedSpot(scene.tagM, turnDeg) },
      ]),
    },
  };
}

/** Gain that just hears it with one's back to the wires, dB. */
const leastBackToWires = (air: Air, awayDeg: number, rollDeg: number): number =>
  leastUpright({ ...air, powerDbm: () => air.powerDbm(awayDeg, rollDeg) }, awayDeg, USUAL_LISTENER);

function lineFromAbove(scene: LineScene, turnDeg: number, you: Spot, marks: readonly PictureMark[]): Picture {
  const reachM = marks.length > 0 ? 1.15 * Math.hypot(...scene.tagM) : 120;
  const end = (m: number) => turnedSpot([m, 0], turnDeg);
  return planAround(reachM, `Plan: a power line, you ${Math.round(scene.asideM)} metres beside it.`, [
    { kind: 'wires', points: [end(-2 * reachM), end(2 * reachM)], poles: [end(0)] },
    ...marks,
    { kind: 'you', at: you, now: true },
  ]);
}

/** The two-sided test as it is heard at a gain: loudness with one's back to the wires, dB over just heard, here and across. */
export function twoSidedTest(trial: Trial, gainDb: number): { readonly hereDb: number; readonly acrossDb: number } {
  const loudness = (walkM: number) => {
    const there = { ...trial.start, gainDb, walkM };
    const away = trial.marks!(there).find(({ name }) => name === 'away')!.deg;
    return heardAt(trial.air(there), there, away).loudnessDb;
  };
  const walk = trial.dials.find(({ key }) => key === 'walkM')!;
  return { hereDb: loudness(0), acrossDb: loudness(walk.to) };
}

export const whichSide: Drill = {
  id: 'which-side',
  title: 'Which side of the wires',
  skill: 'make the two-sided test beside a power line',
  unit: 'dB',
  measures: 'between the two sides',
  ladder: { hardest: 1, easiest: 20, first: 12, step: 1.5, ratio: false },
  kind: 'choose',
  guess: 0.5,
  trials: 5,
  example: [
    'The wires catch the signal and send it down to you: beside them the loudest side is the line.',
    'Turn your back to the wires. Now the antenna hears them least. Bring the gain down until the beep is only just there.',
    'Cross the line, turn your back to the wires again, and leave the gain alone: the knob is held while you are across.',
    'Louder here: the transmitter is on this side. Softer or gone: it was on the first one.',
  ],
  draw,
  says: (number) =>
    `The two-sided test serves you when the sides differ by ${number.toFixed(1)} dB. ${
      number <= 6 ? 'Go on doing it faint: at a loud gain both sides are the same.' : 'Set the gain fainter before you cross.'
    }`,
  caution: 'Outdoors: stay 20 m from overhead lines with the antenna lowered, cross only by a road or path, never go near a fallen wire.',
};
