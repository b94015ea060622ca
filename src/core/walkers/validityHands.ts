import type { Entry } from '../run/actions';
import type { Replay } from '../run/replay';
import type { RunState } from '../run/state';
import { bearingDeg } from '../units/frames';

/** The same intent by other hands: each gives the log that they would have left. */
export type OtherHands = { readonly id: string; readonly logOf: (run: Replay) => readonly Entry[] };

/** 10 steps a second: what was done between two steps is done at the later one. */
const tenASecond: OtherHands = {
  id: '10 steps a second',
  logOf: ({ log }) => log.map(({ tick, action }) => ({ tick: tick + (tick % 2), action })),
};

/** Each tick's turning by the antenna's own heading: a finger that draws it round, at 60 steps a second. */
const touch: OtherHands = {
  id: 'touch, 60 steps a second',
  logOf: ({ log, states }) =>
    inTickOrder([...log.filter(({ action }) => action.type !== 'spin'), ...states.flatMap((state, i) => drawnRound(state, states[i + 1]))]),
};

/** Three headings on the way from one tick's to the next. */
function drawnRound(from: RunState, to: RunState | undefined): readonly Entry[] {
  if (!to || from.spinDegPerS === 0) return [];
  return [1, 2, 3].map((third) => ({
    tick: to.tick,
    action: { type: 'turn', toDeg: to.hold.headingDeg - (from.spinDegPerS / 20) * (1 - third / 3) },
  }));
}

/** A stick that steers the legs: course and pace at every tick in place of a place to walk to. */
const stick: OtherHands = {
  id: 'stick',
  logOf: ({ log, states }) =>
    inTickOrder([...log.filter(({ action }) => action.type !== 'walkTo'), ...states.flatMap((state, i) => steered(states[i - 1], state))]),
};

function steered(before: RunState | undefined, { tick, at, legs }: RunState): readonly Entry[] {
  if (legs.until && legs.paceMPerS > 0) {
    return [{ tick, action: { type: 'walk', courseDeg: bearingDeg(at, legs.until), paceMPerS: legs.paceMPerS } }];
  }
  const stopped = before?.legs.until && before.legs.paceMPerS > 0 && legs.paceMPerS === 0;
  return stopped ? [{ tick, action: { type: 'walk', courseDeg: legs.courseDeg, paceMPerS: 0 } }] : [];
}

/** Stable: what was drawn or steered comes after what was done in the same tick, except that marks and words come last. */
const inTickOrder = (log: readonly Entry[]): readonly Entry[] =>
  [...log].sort((a, b) => a.tick - b.tick || Number(isWord(a)) - Number(isWord(b)));

const isWord = ({ action }: Entry): boolean => action.type === 'mark' || action.type === 'declare' || action.type === 'giveUp';

export const OTHER_HANDS: readonly OtherHands[] = [tenASecond, touch, stick];
