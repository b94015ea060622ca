import { effect } from '@preact/signals';
import { backgroundNow, levelNowDb, type Pulse } from '../core/run/pulse';
import { type RunState, TICK_S } from '../core/run/state';
import { wrapBearingDeg } from '../core/units/angles';
import type { MapPoint } from '../core/units/frames';
import { askedState, live, openRun, paused } from './currentRun';
import type { SoundingPulse, SoundOutput } from './sound/output';

/** How often the sound follows an antenna that is turned by a held key, ms. */
const FOLLOW_EVERY_MS = 8;

/** A pulse that may still sound, and where it was met. */
type Following = { readonly tag: number; readonly atS: number; readonly at: MapPoint; readonly sounding: SoundingPulse };

export type RunSound = {
  /** Sounds the pulses of the tick that is over; until they are over themselves they follow the hand. */
  readonly sound: (pulses: readonly Pulse[], before: RunState) => void;
  readonly stop: () => void;
};

/**
 * Makes noise and pulses follow the hand: knobs and antenna at the moment they are moved, not at the next tick or frame.
 * `sinceTickS` is the time that has passed since the run's last tick: a held key has turned the antenna on by so much.
 */
export function openRunSound(output: () => SoundOutput | null, sinceTickS: () => number): RunSound {
  let following: Following[] = [];
  let timer: ReturnType<typeof setInterval> | null = null;

  const follow = (): void => {
    const [open, state] = [openRun.peek(), askedState.peek()];
    if (!open || !state) return;
    const now = turnedOn(state, sinceTickS());
    output()?.scene({ ...backgroundNow(open.exercise, now), mainsHz: open.exercise.scenario.radio.mainsHz });
    following = following.filter(({ sounding }) => !sounding.isOver());
    for (const { tag, atS, at, sounding } of following) sounding.follow(levelNowDb(open.exercise, { ...now, at }, { tag, atS }));
  };

  const stop = effect(() => {
    const state = askedState.value;
    const sounds = openRun.value !== null && state !== null && !paused.value && live.peek()?.state.ending === null;
    if (sounds) follow();
    else output()?.hush();
    const spins = sounds && state.spinDegPerS !== 0;
    if (spins) timer ??= setInterval(follow, FOLLOW_EVERY_MS);
    else if (timer !== null) {
      clearInterval(timer);
      timer = null;
    }
  });

  return {
    sound(pulses, { at, tick }) {
      const to = output();
      if (!to) return;
      // Pulses are told when their tick is over: the sound stays one tick further behind, so that none comes too late.
      const nowS = tick * TICK_S + sinceTickS();
      for (const { heard, truth } of pulses) following.push({ tag: truth.tag, atS: heard.atS, at, sounding: to.pulse(heard, nowS) });
      // What the hand did since the tick began waits for the next one; the pulse must not.
      if (pulses.length > 0) follow();
    },
    stop() {
      stop();
      if (timer !== null) clearInterval(timer);
    },
  };
}

/** A held key goes on turning between two ticks. */
function turnedOn(state: RunState, sinceTickS: number): RunState {
  if (state.spinDegPerS === 0) return state;
  return { ...state, hold: { ...state.hold, headingDeg: wrapBearingDeg(state.hold.headingDeg + state.spinDegPerS * sinceTickS) } };
}
