import { computed, signal } from '@preact/signals';
import type { Deed } from '../../core/run/intervention';
import type { Pulse } from '../../core/run/pulse';
import type { RunState } from '../../core/run/state';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';
import { CHANNEL, GONE_AFTER_MS, type ToInstructor, type ToRun, WATCHES_EVERY_MS } from './messages';

/** A run as it is known here. */
export type WatchedRun = {
  readonly run: string;
  readonly scenario: Scenario;
  /** Of its walker; may be empty. */
  readonly name: string;
  readonly track: readonly MapPoint[];
  readonly state: RunState | null;
  readonly rests: boolean;
  readonly pulses: readonly Pulse[];
  /** Its page was left or closed: what is shown is how it stood then. */
  readonly isGone: boolean;
};

/** Runs that were heard of on this machine since the window was opened, oldest first. */
export const runs = signal<readonly WatchedRun[]>([]);
const chosen = signal<string | null>(null);

/** The run that is looked at: the chosen one, else the newest that goes on. */
export const watched = computed<WatchedRun | null>(
  () =>
    runs.value.find(({ run }) => run === chosen.value) ??
    [...runs.value].reverse().find(({ isGone }) => !isGone) ??
    runs.value.at(-1) ??
    null,
);

/** The way grows by a point every two metres, as on the run's own map. */
const TRACK_STEP_M = 2;

let channel: BroadcastChannel | null = null;
const say = (message: ToRun): void => channel?.postMessage(message);

/** Listens for runs on this machine until it is stopped. */
export function watchRuns(): () => void {
  runs.value = [];
  chosen.value = null;
  if (typeof BroadcastChannel === 'undefined') return () => {};
  const heardAtMs = new Map<string, number>();
  channel = new BroadcastChannel(CHANNEL);
  const ask = () => {
    for (const { run, isGone } of runs.peek()) {
      if (!isGone && Date.now() - (heardAtMs.get(run) ?? 0) > GONE_AFTER_MS) change(run, (before) => ({ ...before, isGone: true }));
    }
    say({ to: 'run', kind: 'watching', run: watched.peek()?.run ?? null, known: runs.peek().map(({ run }) => run) });
  };
  channel.onmessage = ({ data }: MessageEvent<ToRun | ToInstructor>) => {
    if (data.to !== 'instructor') return;
    heardAtMs.set(data.run, Date.now());
    takeIn(data);
    if (data.kind === 'run') ask();
  };
  const timer = setInterval(ask, WATCHES_EVERY_MS);
  ask();
  return () => {
    clearInterval(timer);
    channel?.close();
    channel = null;
  };
}

export function watch(run: string): void {
  chosen.value = run;
  say({ to: 'run', kind: 'watching', run, known: runs.peek().map((one) => one.run) });
}

/** Asks the watched run to take a deed in; what came of it is told by the run. */
export function does(deed: Deed): void {
  const run = watched.peek()?.run;
  if (run !== undefined) say({ to: 'run', kind: 'deed', run, deed });
}

function takeIn(data: ToInstructor): void {
  if (data.kind === 'run') {
    const { run, scenario, name, track } = data;
    if (runs.peek().some((known) => known.run === run)) return;
    runs.value = [...runs.peek(), { run, scenario, name, track, state: null, rests: true, pulses: [], isGone: false }];
  } else if (data.kind === 'gone') change(data.run, (before) => ({ ...before, isGone: true }));
  else {
    const { state, rests, pulses } = data;
    change(data.run, (before) => ({ ...before, state, rests, pulses, track: goneOn(before.track, state.at), isGone: false }));
  }
}

function change(run: string, to: (before: WatchedRun) => WatchedRun): void {
  runs.value = runs.peek().map((one) => (one.run === run ? to(one) : one));
}

function goneOn(track: readonly MapPoint[], at: MapPoint): readonly MapPoint[] {
  const last = track.at(-1);
  return last && Math.hypot(at.eM - last.eM, at.nM - last.nM) < TRACK_STEP_M ? track : [...track, at];
}
