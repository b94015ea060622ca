import { TICKS_PER_S } from '../run/state';
import { fullLooks } from './fullLook';
import { clock, type Evidence, type Habit, type HabitResult, linearScore, type Moment, notShown, telling, weightedMean } from './habit';
import { longestUncut, type Sweep, sweepsOf, unwrappedHeadings } from './sweeps';
import { pulseIntervalS } from './tunedTag';

/** So many sweeps are too few, in words. */
const COUNTED = ['at no time', 'once', 'twice'];
/** Fewer sweeps than this show nothing. */
const LEAST_SWEEPS = 3;
/** Share of spoilt arc: up to here it is a slip, from there it is no habit at all. */
const SLIP_SHARE = 0.05;
const NO_HABIT_SHARE = 0.4;
const LOOK_WEIGHT = 0.25;

/** Hands off the controls while the antenna turns. */
export const setThenSweep: Habit = { id: 'setThenSweep', name: 'Set, then sweep', judge };

/** The spoilt arc of each sweep: its arc less its longest uncut piece, degrees. */
function spoiltArcsDeg(headings: Float64Array, sweeps: readonly Sweep[]): readonly number[] {
  const uncut = sweeps.map((sweep) => longestUncut(headings, sweep));
  return sweeps.map(({ arcDeg }, i) => Math.max(0, arcDeg - uncut[i]!.arcDeg));
}

function judge(evidence: Evidence): HabitResult {
  const { states } = evidence.run;
  const sweeps = sweepsOf(states, pulseIntervalS(evidence));
  if (sweeps.length < LEAST_SWEEPS) return notShown(`The antenna was swept ${COUNTED[sweeps.length]}; three sweeps show the habit.`);
  const headings = unwrappedHeadings(states);
  const spoilt = spoiltArcsDeg(headings, sweeps);
  const arc = sweeps.reduce((sum, { arcDeg }) => sum + arcDeg, 0);
  const hands = linearScore(spoilt.reduce((sum, deg) => sum + deg, 0) / arc, SLIP_SHARE, NO_HABIT_SHARE);
  // A sweep spoilt by more than a slip is no look, however its pieces add up: one has not heard round at one setting.
  const uncut = sweeps.filter(({ arcDeg }, i) => spoilt[i]! <= SLIP_SHARE * arcDeg).map((sweep) => longestUncut(headings, sweep));
  const looks = fullLooks(evidence, uncut);
  const score = weightedMean([
    { score: hands, weight: 1 - LOOK_WEIGHT },
    { score: looks.score, weight: LOOK_WEIGHT },
  ]);
  const moments = sweeps.map((sweep, i) => momentOf(sweep, spoilt[i]!));
  return {
    score,
    components: { handsOff: hands, fullLook: looks.score },
    moments: telling([...moments, ...looks.moments]),
    whyNotShown: '',
  };
}

function momentOf({ fromTick, toTick, arcDeg, cutTicks }: Sweep, spoiltDeg: number): Moment {
  const fromS = fromTick / TICKS_PER_S;
  const span = { fromS, toS: toTick / TICKS_PER_S };
  if (cutTicks.length === 0) {
    const what = `At ${clock(fromS)} you swept ${arcDeg.toFixed(0)} degrees and left the knobs alone.`;
    return { ...span, what, next: 'Keep it so: what changed in the sound was the direction.', weight: Math.min(360, arcDeg), good: true };
  }
  return {
    ...span,
    what: `At ${clock(cutTicks[0]! / TICKS_PER_S)} you changed the setting in mid-sweep; ${spoiltDeg.toFixed(0)} degrees of it can't be compared.`,
    next: 'Stop the antenna, set the gain, then sweep from the beginning.',
    weight: spoiltDeg,
    good: false,
  };
}
