import type { Scenario } from '../scenario/schema';
import type { Pulse } from './pulse';
import type { Controls, Hold, RunState } from './state';
import { TICKS_PER_S } from './state';

/** A beep that was due and was not heard, and how antenna and receiver stood then. */
export type Silence = { readonly atTick: number; readonly walkedM: number; readonly hold: Hold; readonly controls: Controls };

/** What was not heard this many metres of walking ago says nothing of the ground round here. */
const KEPT_WALK_M = 10;

/** The weakest tag of the list, as it is written down there. */
export const weakestTag = ({ tags }: Pick<Scenario, 'tags'>): number =>
  tags.reduce((least, { eirpDbm }, i) => (eirpDbm < tags[least]!.eirpDbm ? i : least), 0);

/** The silences among the pulses that began in the tick that `before` stands at the beginning of. */
export const silencesAmong = (scenario: Scenario, before: RunState, begun: readonly Pulse[]): readonly Silence[] =>
  begun
    .filter(({ heard, truth }) => truth.tag === weakestTag(scenario) && !heard.audible)
    .map(() => ({ atTick: before.tick, walkedM: before.walkedM, hold: before.hold, controls: before.controls }));

/** All silences of a run lived through again: `states[k].tick === k`. */
export function silencesOf(scenario: Scenario, states: readonly RunState[], pulses: readonly Pulse[]): readonly Silence[] {
  return pulses.flatMap((pulse) => {
    const before = states[Math.floor(pulse.heard.atS * TICKS_PER_S + 1e-6)];
    return before ? silencesAmong(scenario, before, [pulse]) : [];
  });
}

/** Those that speak of the ground round a place: within the last metres walked before it was asked. */
export const silencesHere = (
  silences: readonly Silence[],
  { atTick, walkedM }: { readonly atTick: number; readonly walkedM: number },
): readonly Silence[] => silences.filter((silence) => silence.atTick < atTick && walkedM - silence.walkedM <= KEPT_WALK_M);
