import type { Listener } from '../ear/loudness';
import type { Drill, Judged, Trial } from './drill';
import { answered, beginStaircase, type Staircase } from './staircase';
import { type Answered, thresholdOf } from './threshold';

/** In a check nothing helps: no hints, no verdict before the end. */
export type SessionKind = 'practice' | 'check';

/** One answer of a session. `error` is in the drill's unit for drills that set something, else 0 or 1. */
export type GivenAnswer = Answered & { readonly error: number };

/** A minute of one drill, as it stands. */
export type Session = {
  readonly drill: Drill;
  readonly kind: SessionKind;
  readonly seed: string;
  readonly sessionsBefore: number;
  readonly stair: Staircase;
  readonly answers: readonly GivenAnswer[];
};

type Begin = { readonly seed: string; readonly kind?: SessionKind; readonly sessionsBefore?: number; readonly stair?: Staircase | null };

export const beginSession = (drill: Drill, { seed, kind = 'practice', sessionsBefore = 0, stair = null }: Begin): Session => ({
  drill,
  kind,
  seed,
  sessionsBefore,
  stair: stair ?? beginStaircase(drill.ladder),
  answers: [],
});

/** The next situation: drawn from the session's seed and the number of the trial, so never twice the same. */
export const nextTrial = ({ drill, seed, stair, answers }: Session, listener: Listener): Trial =>
  drill.draw(`${seed}/${drill.id}/${answers.length}`, stair.level, listener);

export const isOver = ({ drill, answers }: Session): boolean => answers.length >= drill.trials;

export function withAnswer(session: Session, trial: Trial, judged: Judged): Session {
  const answer = { level: trial.level, right: judged.right, error: judged.error };
  return { ...session, stair: answered(session.drill.ladder, session.stair, judged.right), answers: [...session.answers, answer] };
}

/** Sessions with a hint at every trial, then with one at every other. */
const HINTED = 2;
const HALF_HINTED = 4;

/** Is the next trial one with a hint? All of the first sessions, half of the next, none from then on, and none in a check. */
export function hintNow({ kind, sessionsBefore, answers }: Session): boolean {
  if (kind === 'check') return false;
  if (sessionsBefore < HINTED) return true;
  return sessionsBefore < HALF_HINTED && answers.length % 2 === 0;
}

/** How wide a listener's own scale is, in steps of the ladder: one for all, so that numbers can be compared (our choice). */
const SPREAD_STEPS = 1.5;

/** The session's one number, in the drill's unit: less is better. */
export function numberOf({ drill, answers }: Session): number {
  if (drill.kind === 'choose') return thresholdOf(drill.ladder, answers, { guess: drill.guess, spreadSteps: SPREAD_STEPS });
  return median(answers.map(({ error }) => error));
}

export const rightShareOf = ({ answers }: Session): number =>
  answers.length === 0 ? 0 : answers.filter(({ right }) => right).length / answers.length;

/** Middle of the values, between the middle two where there are two; 0 without any. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** A number of a drill as it is shown: tenths where they mean something. */
export function numberText({ unit }: Pick<Drill, 'unit'>, number: number): string {
  if (unit === 'Hz') return String(Math.round(number / 5) * 5);
  return unit === 'm' || unit === '%' ? String(Math.round(number)) : number.toFixed(1);
}
