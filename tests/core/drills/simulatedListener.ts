import type { Answer, Drill, Move, Trial } from '../../../src/core/drills/drill';
import { beginSession, isOver, nextTrial, numberOf, withAnswer } from '../../../src/core/drills/session';
import type { Staircase } from '../../../src/core/drills/staircase';
import { heardAt } from '../../../src/core/listening/air';
import type { Settings } from '../../../src/core/listening/settings';
import { randomFor } from '../../../src/core/random/draw';
import { turnDeg } from '../../../src/core/units/angles';

/** A person who hears what the trial sounds like, with so much error, and acts on nothing else. */
export type Hands = {
  /** Error of a judgement of one beep's loudness, dB. */
  readonly judgementSdDb: number;
  /** Beeps that are listened to before something is decided. */
  readonly beeps: number;
  /** Error of a remembered note, octaves. */
  readonly noteSdOctaves: number;
  /** Gain left over just heard before bearings are taken, dB; more blurs. */
  readonly spareDb: number;
};

export const IDEAL: Hands = { judgementSdDb: 1, beeps: 4, noteSdOctaves: 0.1, spareDb: 8 };
export const POOR: Hands = { judgementSdDb: 5, beeps: 1, noteSdOctaves: 0.7, spareDb: 32 };

const LISTENER = { thresholdDb: 0 };

type Ear = { readonly loud: (settings: Settings) => number; readonly normal: () => number; readonly hands: Hands };

function earFor(trial: Trial, hands: Hands, random: () => number): Ear {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return {
    hands,
    normal,
    /** Loudness over just heard, dB, mean of a few judgements. Loudness out of the limiter, as it sounds. */
    loud(settings) {
      const { loudnessDb } = heardAt(trial.air(settings), settings, settings.headingDeg, LISTENER);
      return loudnessDb + (hands.judgementSdDb * normal()) / Math.sqrt(hands.beeps);
    },
  };
}

const louderOf = (ear: Ear, all: readonly Settings[]): number => {
  const heard = all.map(ear.loud);
  return heard.indexOf(Math.max(...heard));
};
const facing = (settings: Settings, headingDeg: number): Settings => ({ ...settings, headingDeg: Math.round(headingDeg + 360) % 360 });

/** Gain at which the beep seems just heard on this heading. */
function justHeard(ear: Ear, settings: Settings): Settings {
  let { gainDb } = settings;
  while (gainDb > 0 && ear.loud({ ...settings, gainDb }) > 0) gainDb--;
  return { ...settings, gainDb };
}

/** Loudest heading of a turn in steps, judged beep by beep. */
function loudestHeading(ear: Ear, settings: Settings, fromDeg = 0, toDeg = 360, stepDeg = 15): number {
  const headings = Array.from({ length: Math.floor((toDeg - fromDeg) / stepDeg) }, (_, i) => fromDeg + i * stepDeg);
  return headings[
    louderOf(
      ear,
      headings.map((deg) => facing(settings, deg)),
    )
  ]!;
}

/** Half way between the two edges at which the beep is gone. */
function twoEdges(ear: Ear, settings: Settings, rough = loudestHeading(ear, settings)): Settings {
  const quiet = { ...justHeard(ear, facing(settings, rough)) };
  const at = { ...quiet, gainDb: Math.min(90, quiet.gainDb + ear.hands.spareDb) };
  const edge = (way: 1 | -1): number => {
    for (let off = 0; off < 120; off += 3) if (ear.loud(facing(at, rough + way * off)) <= 0) return off;
    return 120;
  };
  return facing(at, rough + (edge(1) - edge(-1)) / 2);
}

type Play = (trial: Trial, ear: Ear) => { readonly answer: Answer; readonly moves?: readonly Move[] };
const choice = (number: number) => ({ answer: { kind: 'choice', choice: number } as const });
const marked = (trial: Trial) => (deg: string) => trial.marks!(trial.start).find(({ name }) => name === deg)!.deg;

const PLAYS: Readonly<Record<string, Play>> = {
  'front-or-back': (trial, ear) =>
    choice(
      louderOf(
        ear,
        ['A', 'B'].map((name) => facing(trial.start, marked(trial)(name))),
      ),
    ),
  'louder-or-softer': (trial, ear) =>
    choice(
      louderOf(
        ear,
        trial.takes!.map(({ settings }) => settings),
      ),
    ),
  'which-axis': (trial, ear) => {
    const quiet = ear.hands.spareDb < 20 ? { ...trial.start, gainDb: Math.max(0, justHeard(ear, trial.start).gainDb + 8) } : trial.start;
    return choice(
      louderOf(
        ear,
        [0, 90].map((rollDeg) => ({ ...quiet, rollDeg })),
      ),
    );
  },
  'which-side': (trial, ear) => {
    const walk = trial.dials.find(({ key }) => key === 'walkM')!;
    const away = (walkM: number, gainDb: number) => {
      const there = { ...trial.start, walkM, gainDb };
      return facing(there, trial.marks!(there).find(({ name }) => name === 'away')!.deg);
    };
    const gainDb = Math.min(90, justHeard(ear, away(0, trial.start.gainDb)).gainDb + ear.hands.spareDb);
    return choice(louderOf(ear, [away(0, gainDb), away(walk.to, gainDb)]));
  },
  'faint-edge': (trial, ear) => {
    const set = justHeard(ear, facing(trial.start, loudestHeading(ear, trial.start)));
    return {
      answer: { kind: 'setting', settings: set },
      moves: [
        { atS: 0, settings: trial.start },
        { atS: 9, settings: set },
      ],
    };
  },
  'two-edge-bearing': (trial, ear) => ({ answer: { kind: 'setting', settings: twoEdges(ear, trial.start) } }),
  'on-the-note': (trial, ear) => {
    const wanted = 1_000 * 2 ** (ear.hands.noteSdOctaves * ear.normal());
    const noteHz = (offsetHz: number) => heardAt(trial.air(trial.start), { ...trial.start, offsetHz }, trial.start.headingDeg).pitchHz;
    const dial = Array.from({ length: 151 }, (_, i) => -3_000 + 40 * i);
    const best = dial.reduce((a, b) => (Math.abs(noteHz(b) - wanted) < Math.abs(noteHz(a) - wanted) ? b : a));
    return { answer: { kind: 'setting', settings: { ...trial.start, offsetHz: best } } };
  },
  'how-far': (trial, ear) => {
    const { gainDb } = justHeard(ear, facing(trial.start, loudestHeading(ear, trial.start)));
    const wood = /About (\d+) m of wood/.exec(trial.ask);
    const openDb = gainDb - (wood ? (Number(wood[1]) > 200 ? 8 : 4) : 0);
    return { answer: { kind: 'amount', amount: 500 * 2 ** ((openDb - 10) / 12) } };
  },
  'cross-the-lines': (trial, ear) => {
    const stations = trial.answer.kind === 'pin' ? trial.answer.stations : [];
    const lines = stations.map((from, at) => ({ from, deg: twoEdges(ear, { ...trial.start, choice: at }).headingDeg }));
    return { answer: { kind: 'pin', at: nearestPoint(lines) } };
  },
  'true-or-bounce': (trial, ear) => {
    const end = trial.dials.find(({ key }) => key === 'walkM')!.to;
    const swing = (name: string) => {
      const from = marked(trial)(name);
      const found = [0, end].map((walkM) => {
        const there = { ...trial.start, walkM };
        return twoEdges(ear, there, loudestHeading(ear, there, from - 50, from + 51, 10)).headingDeg;
      });
      return Math.abs(turnDeg(found[0]!, found[1]!));
    };
    return choice(swing('A') < swing('B') ? 0 : 1);
  },
};

/** Point with the least squared distance from the lines. */
function nearestPoint(lines: readonly { readonly from: readonly [number, number]; readonly deg: number }[]): readonly [number, number] {
  let [a, b, c, d, e] = [0, 0, 0, 0, 0];
  for (const { from, deg } of lines) {
    const [nx, ny] = [Math.cos((deg * Math.PI) / 180), -Math.sin((deg * Math.PI) / 180)];
    const p = nx * from[0] + ny * from[1];
    [a, b, c, d, e] = [a + nx * nx, b + nx * ny, c + ny * ny, d + nx * p, e + ny * p];
  }
  const det = a * c - b * b;
  return Math.abs(det) < 1e-6 ? [0, 0] : [(d * c - e * b) / det, (a * e - b * d) / det];
}

/** Sessions of a drill one after another, the staircase going on from each to the next. @returns their numbers */
export function numbersOf(drill: Drill, hands: Hands, sessions: number, seed: string): readonly number[] {
  let stair: Staircase | null = null;
  return Array.from({ length: sessions }, (_, i) => {
    let session = beginSession(drill, { seed: `${seed}/${i}`, sessionsBefore: i, stair });
    while (!isOver(session)) {
      const trial = nextTrial(session, LISTENER);
      const ear = earFor(trial, hands, randomFor(`${seed}/${drill.id}/${i}`, 'judgement', session.answers.length));
      const { answer, moves = [] } = PLAYS[drill.id]!(trial, ear);
      session = withAnswer(session, trial, trial.judge(answer, moves));
    }
    stair = session.stair;
    return numberOf(session);
  });
}
