import { CLEAREST_NOTE_HZ, pitchHz } from '../receiver/tuning';
import type { Pulse } from '../run/pulse';
import type { RunState } from '../run/state';
import type { Evidence } from './habit';

/** The tag that the dial is nearest to at a state: the one being listened to. */
export function tunedTag({ exercise }: Evidence, state: RunState): number {
  const offs = exercise.scenario.tags.map((tag) => Math.abs(pitchHz(tag.frequencyMHz, state.controls.tunedMHz) - CLEAREST_NOTE_HZ));
  return offs.indexOf(Math.min(...offs));
}

/** The pulses of the tag that was listened to, each with its state. */
export function listenedPulses(evidence: Evidence): readonly { readonly pulse: Pulse; readonly state: RunState }[] {
  const { states, pulses } = evidence.run;
  return pulses.flatMap((pulse) => {
    const state = states[Math.min(states.length - 1, Math.floor(pulse.heard.atS * 20 + 1e-6))]!;
    return tunedTag(evidence, state) === pulse.truth.tag ? [{ pulse, state }] : [];
  });
}

/** Interval between the pulses of the first tag, seconds. */
export const pulseIntervalS = ({ exercise }: Evidence): number => 60 / exercise.scenario.tags[0]!.pulsesPerMinute;
