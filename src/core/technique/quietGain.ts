import { type RunState, TICKS_PER_S } from '../run/state';
import { clock, type Evidence, type Habit, type HabitResult, linearScore, type Moment, notShown, telling, weightedMean } from './habit';
import { sweepsOf, turningTicks, unwrappedHeadings } from './sweeps';
import { timeToCut } from './timeToCut';
import { listenedPulses, pulseIntervalS } from './tunedTag';

/** Full marks up to this excess: under about 6 dB the ear itself blurs the arc's edges, over 10 the arc only widens. */
const ENOUGH_DB = 10;
/** None from here on. */
const FAR_TOO_MUCH_DB = 30;
/** Silence this long is finding the floor; more of it is not listening. */
const FLOOR_FINDING_S = 15;
/** Listening reaches this far round a sweep or a marked bearing. */
const AROUND_S = 10;
/** A heading counts as held after this many pulse intervals without turning. */
const HELD_PULSES = 2.5;
/** The lowest the receiver can be set: no gain, all attenuation. */
const LOWEST_NET_DB = -30;
const CUT_WEIGHT = 0.25;
/** Moments are stretches of this length. */
const STRETCH_S = 30;

/** 1 for 0 to 10 dB of excess, linear to 0 at 30 dB. Saturation counts as 30 or more. */
export const excessMark = (excessDb: number, flatOut: boolean): number =>
  flatOut ? 0 : linearScore(excessDb, ENOUGH_DB, FAR_TOO_MUCH_DB) / 100;

type Marked = { readonly atS: number; readonly mark: number; readonly weightS: number; readonly excessDb: number };

/** No more gain than the ear needs. */
export const quietGain: Habit = { id: 'quietGain', name: 'Quiet gain', judge };

function judge(evidence: Evidence): HabitResult {
  const marked = markedPulses(evidence);
  if (marked.length === 0) return notShown('No pulse was listened to where the least gain is known.');
  const total = marked.reduce((sum, { weightS }) => sum + weightS, 0);
  const level = (100 * marked.reduce((sum, { mark, weightS }) => sum + mark * weightS, 0)) / total;
  const cut = timeToCut(evidence);
  const score = weightedMean([
    { score: level, weight: 1 - CUT_WEIGHT },
    { score: cut.score, weight: CUT_WEIGHT },
  ]);
  return {
    score,
    components: { excess: level, timeToCut: cut.score },
    moments: telling([...stretches(marked), ...cut.moments]),
    whyNotShown: '',
  };
}

/** Every listening pulse with a defined least gain, its mark and the time it stands for. */
function markedPulses(evidence: Evidence): readonly Marked[] {
  const isListening = listeningTest(evidence);
  const intervalS = pulseIntervalS(evidence);
  const counted: Marked[] = [];
  let silentSinceS: number | null = null;
  let lastS: number | null = null;
  for (const { pulse, state } of listenedPulses(evidence)) {
    const { excessDb } = pulse.truth;
    const { atS, flatOut } = pulse.heard;
    if (excessDb === null || !isListening(atS)) continue;
    const weightS = lastS === null ? intervalS : Math.min(2 * intervalS, atS - lastS);
    lastS = atS;
    if (excessDb >= 0) silentSinceS = null;
    else silentSinceS ??= atS;
    const finding = silentSinceS !== null && atS - silentSinceS < FLOOR_FINDING_S;
    if (!finding)
      counted.push({ atS, mark: markOf(excessDb, flatOut, state), weightS, excessDb: flatOut ? Math.max(30, excessDb) : excessDb });
  }
  return counted;
}

function markOf(excessDb: number, flatOut: boolean, { controls }: RunState): number {
  if (controls.gainDb - controls.attenuatorDb <= LOWEST_NET_DB) return 1; // nothing lower can be set
  return excessDb < 0 ? 0 : excessMark(excessDb, flatOut);
}

/** Within 10 s of a sweep or a marked bearing, or on a held heading. */
function listeningTest(evidence: Evidence): (atS: number) => boolean {
  const { run } = evidence;
  const intervalS = pulseIntervalS(evidence);
  const near = new Uint8Array(run.states.length);
  const fill = (fromTick: number, toTick: number) => near.fill(1, Math.max(0, fromTick), Math.max(0, toTick + 1));
  const around = AROUND_S * TICKS_PER_S;
  for (const { fromTick, toTick } of sweepsOf(run.states, intervalS)) fill(fromTick - around, toTick + around);
  for (const { atTick } of run.state.notebook) fill(atTick - around, atTick + around);
  const turning = turningTicks(unwrappedHeadings(run.states));
  let still = 0;
  for (let tick = 0; tick < turning.length; tick++) {
    still = turning[tick] ? 0 : still + 1;
    if (still >= HELD_PULSES * intervalS * TICKS_PER_S) near[tick] = 1;
  }
  return (atS) => near[Math.min(near.length - 1, Math.floor(atS * TICKS_PER_S))] === 1;
}

function stretches(marked: readonly Marked[]): readonly Moment[] {
  const groups = new Map<number, Marked[]>();
  for (const pulse of marked) {
    const key = Math.floor(pulse.atS / STRETCH_S);
    groups.set(key, [...(groups.get(key) ?? []), pulse]);
  }
  return [...groups.values()].map(momentOf);
}

function momentOf(group: readonly Marked[]): Moment {
  const fromS = group[0]!.atS;
  const weight = group.reduce((sum, { weightS }) => sum + weightS, 0);
  const mean = group.reduce((sum, { mark, weightS }) => sum + mark * weightS, 0) / weight;
  const excessDb = group.reduce((sum, pulse) => sum + pulse.excessDb * pulse.weightS, 0) / weight;
  const span = { fromS, toS: group.at(-1)!.atS };
  if (mean >= 0.75) {
    const what = `At ${clock(fromS)} the gain was ${excessDb.toFixed(0)} dB above what your ear needed: quiet, and enough.`;
    return { ...span, what, next: 'Keep it there: lower the gain as you come nearer.', weight: weight * mean, good: true };
  }
  const silent = excessDb < 0;
  const what = silent
    ? `At ${clock(fromS)} the gain was ${(-excessDb).toFixed(0)} dB too low to hear a beep, and stayed there.`
    : `At ${clock(fromS)} the gain was ${excessDb.toFixed(0)} dB above what your ear needed: front and back sounded nearly alike.`;
  const next = silent
    ? 'When the beep is gone for a quarter of a minute, raise the gain until it is just heard again.'
    : 'Lower the gain until the beep is only just heard, then sweep.';
  return { ...span, what, next, weight: weight * (1 - mean), good: false };
}
