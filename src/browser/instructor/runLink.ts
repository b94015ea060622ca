import { effect } from '@preact/signals';
import { isDeed } from '../../core/run/intervention';
import type { Pulse } from '../../core/run/pulse';
import { actOfInstructor, instructorThere, live, openRun, paused, track } from '../currentRun';
import { settings } from '../storage/settings';
import { CHANNEL, GONE_AFTER_MS, TELLS_EVERY_MS, type ToInstructor, type ToRun } from './messages';

/** Tells an instructor's window on this machine how the run stands, and does to it what comes from there. @returns stops */
export function answerInstructor(): () => void {
  if (typeof BroadcastChannel === 'undefined') return () => {};
  const channel = new BroadcastChannel(CHANNEL);
  const run = ownName();
  const say = (message: ToInstructor) => channel.postMessage(message);
  let watchedAtMs = Number.NEGATIVE_INFINITY;
  let timer: ReturnType<typeof setInterval> | null = null;

  const tellNow = () => {
    const now = live.peek();
    if (now) say({ to: 'instructor', kind: 'now', run, state: now.state, rests: paused.peek(), pulses: lastOfEach(now.pulses) });
  };
  const stopTelling = () => {
    if (timer !== null) clearInterval(timer);
    timer = null;
    instructorThere.value = false;
  };
  const beWatched = () => {
    watchedAtMs = Date.now();
    instructorThere.value = true;
    actOfInstructor({ type: 'watch' });
    timer ??= setInterval(() => {
      if (Date.now() - watchedAtMs > GONE_AFTER_MS) stopTelling();
      else tellNow();
    }, TELLS_EVERY_MS);
    tellNow();
  };
  channel.onmessage = ({ data }: MessageEvent<ToRun | ToInstructor>) => {
    const open = openRun.peek();
    if (data.to !== 'run' || !open) return;
    if (data.kind === 'deed') {
      if (data.run === run && isDeed(data.deed)) actOfInstructor(data.deed);
      tellNow();
      return;
    }
    if (!data.known.includes(run)) {
      const { scenario } = open.exercise;
      say({ to: 'instructor', kind: 'run', run, scenario, name: settings.peek().name.trim(), track: track.peek() });
    }
    if (data.run === run) beWatched();
  };
  // A deed is seen over there at once, not at the next telling.
  const stopTold = effect(() => {
    void [paused.value, live.value?.state.interventions.length, live.value?.state.ending];
    if (instructorThere.peek()) tellNow();
  });
  return () => {
    stopTold();
    if (instructorThere.peek()) tellNow();
    say({ to: 'instructor', kind: 'gone', run });
    stopTelling();
    channel.close();
  };
}

/** Another one for each run that is opened: two windows may play the same exercise. */
const ownName = (): string => Array.from(crypto.getRandomValues(new Uint32Array(2)), (part) => part.toString(36)).join('');

function lastOfEach(pulses: readonly Pulse[]): readonly Pulse[] {
  const byTag = new Map<number, Pulse>();
  // Tags send about once a second: the last few pulses hold one of each.
  for (const pulse of pulses.slice(-40)) byTag.set(pulse.truth.tag, pulse);
  return [...byTag.values()];
}
