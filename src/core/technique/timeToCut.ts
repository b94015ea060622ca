import { TICKS_PER_S } from '../run/state';
import { clock, type Evidence, linearScore, type Moment } from './habit';
import { sweepsOf } from './sweeps';
import { listenedPulses, pulseIntervalS } from './tunedTag';

const SOON_S = 10;
const LATE_S = 60;
/** Less gain than this is no answer to saturation. */
const ANSWER_DB = 3;
const LOWEST_NET_DB = -30;

/**
 * How soon the gain came down, or the attenuator went in, after a sweep in which the sound saturated.
 * @returns mean over such episodes, `null` where the sound never saturated in a sweep
 */
export function timeToCut(evidence: Evidence): { readonly score: number | null; readonly moments: readonly Moment[] } {
  const { states } = evidence.run;
  const flat = listenedPulses(evidence).filter(({ pulse }) => pulse.heard.flatOut && pulse.heard.audible);
  const net = (tick: number) => states[tick]!.controls.gainDb - states[tick]!.controls.attenuatorDb;
  const moments: Moment[] = [];
  const scores: number[] = [];
  let answeredUntil = -1;
  for (const { fromTick, toTick } of sweepsOf(states, pulseIntervalS(evidence))) {
    if (fromTick < answeredUntil) continue; // the same episode still waits for its answer
    const first = flat.find(({ state }) => state.tick >= fromTick && state.tick <= toTick);
    if (!first || net(first.state.tick) <= LOWEST_NET_DB) continue;
    const answer = states.findIndex((state) => state.tick > first.state.tick && net(state.tick) <= net(first.state.tick) - ANSWER_DB);
    const until = answer < 0 ? states.length - 1 : answer;
    const waitedS = Math.max(0, (until - toTick) / TICKS_PER_S);
    answeredUntil = until;
    if (answer < 0 && waitedS < SOON_S) continue; // the run ended before an answer was due
    const score = linearScore(waitedS, SOON_S, LATE_S);
    scores.push(score);
    moments.push(momentOf(toTick / TICKS_PER_S, waitedS, score, answer >= 0));
  }
  return { score: scores.length === 0 ? null : scores.reduce((a, b) => a + b, 0) / scores.length, moments };
}

function momentOf(fromS: number, waitedS: number, score: number, answered: boolean): Moment {
  const good = score >= 75;
  const when = answered ? `${waitedS.toFixed(0)} s later` : 'not before the end';
  return {
    fromS,
    toS: fromS + waitedS,
    what: `At ${clock(fromS)} the sweep was flat out; the gain came down ${when}.`,
    next: good
      ? 'Go on answering a flat-out beep at once.'
      : 'When turning the antenna changes nothing, take gain away or put the attenuator in before you sweep again.',
    weight: good ? 5 : (waitedS * (100 - score)) / 100,
    good,
  };
}
