import { effect, signal } from '@preact/signals';
import { type Exercise, openExercise } from '../core/run/exercise';
import { beginLive, type Live } from '../core/run/live';
import { pulseNow } from '../core/run/pulse';
import { type RunResult, recordingOf, runFileOf } from '../core/run/record';
import { TICKS_PER_S } from '../core/run/state';
import type { Scenario } from '../core/scenario/schema';
import { ending, justBegun, live, openRun, paused, showRun, wholeSecond } from './currentRun';
import { finishedRun, forgetFinished } from './finishedRun';
import { listenerHere } from './listenerHere';
import { localInstant } from './localInstant';
import { resumed } from './resumeRun';
import { practiceNow } from './runEntry';
import type { SoundOutput } from './sound/output';
import { soundLoss, unlockedContext } from './sound/unlock';
import type { Stage } from './start/Opening';
import { settings } from './storage/settings';
import { type KeptRun, type RunPlace, takePlace } from './storage/unfinished';
import { putOnShelf, unkeptRuns } from './unkeptRuns';
import { openLand } from './workers/openLand';
import { openWavesAhead, type WavesAhead } from './workers/wavesAhead';

/** An exercise on its way from the start page to the ground. */
export const opening = signal<{ readonly scenario: Scenario; readonly stage: Stage; readonly fault: string | null } | null>(null);
export const sound = signal<SoundOutput | null>(null);
/** Captions were on at some time of this run: results say so. */
export const aided = signal(false);

/** Counts what was asked for: what comes of an earlier exercise is let go. */
let asked = 0;
/** Where the open run is kept. */
let place: RunPlace | null = null;
/** When the run that is open began, by this device's clock. */
let begunAt = '';
/** When the hearing check was made that its listener comes from. */
let checkedAt: string | null = null;
let waves: WavesAhead | null = null;

/**
 * Makes the ground in a worker, opens the run on it, and lets it begin where sound is allowed to. `screen` is the coming of the screen that
 * shows it: nothing begins that can't be seen.
 */
export async function openRunOf(scenario: Scenario, from: KeptRun | null, screen: Promise<boolean>): Promise<void> {
  const mine = ++asked;
  const kept = from?.run ?? null;
  const tell = (stage: Stage) => {
    opening.value = { scenario, stage, fault: null };
  };
  tell('ground');
  forgetFinished();
  try {
    const [{ world, land }, who] = await Promise.all([
      openLand(scenario, () => mine === asked && tell('map')),
      listenerHere(),
      openSound(),
    ]);
    const isThere = await screen;
    if (mine !== asked) return;
    if (!isThere) throw new Error('the code of its screen did not come. Is the network gone?');
    tell('waves');
    const exercise = openExercise(scenario, world);
    const come = kept ? resumed(exercise, kept) : justBegun(beginLive(exercise, who.listener));
    const first = come.live;
    checkedAt = kept ? (kept.checkedAt ?? null) : who.checkedAt;
    waves?.close();
    waves = openWavesAhead(exercise);
    await waves.ready(first.state);
    if (mine !== asked) return;
    warmUp(exercise, first);
    aided.value = false;
    begunAt = kept?.begunAt ?? localInstant(new Date());
    place?.leave();
    place = takePlace(from);
    showRun({ exercise, land }, come);
    opening.value = null;
    paused.value = kept !== null || unlockedContext()?.state !== 'running';
  } catch (fault) {
    if (mine !== asked) return;
    opening.value = { scenario, stage: 'ground', fault: fault instanceof Error ? fault.message : String(fault) };
  }
}

/** The first pulse of each tag solves the antenna and lights the echoes: done while the page still says that it is opening. */
function warmUp(exercise: Exercise, { state, listener }: Live): void {
  exercise.scenario.tags.forEach((_, tag) => {
    pulseNow(exercise, state, { tag, number: 0, atS: state.tick / TICKS_PER_S }, listener);
  });
}

/** Opens the loudspeaker where a gesture has allowed it; a page that was opened by its address waits for the first one. */
export async function openSound(): Promise<void> {
  const context = unlockedContext();
  if (!context || sound.peek()) return;
  try {
    const { openSoundOutput } = await import('./sound/output');
    sound.value = await openSoundOutput(context);
  } catch (fault) {
    // A run can be played by captions and level bar: no sound is not the end of it.
    soundLoss.value = 'failed';
    console.error('no sound', fault);
  }
}

/** Everything that goes on beside a run: volume, keeping it every second, putting it away at its end. @returns stops */
export function tendRun(onEnd: (key: number | null) => void): () => void {
  const stops = [
    effect(() => sound.value?.volume(settings.value.volumeDb, settings.value.muted)),
    effect(() => {
      if (!paused.value && openRun.value) void openSound();
    }),
    effect(() => {
      // whoever steers by ear must not walk on unknowing
      if (soundLoss.value === 'stopped' && !settings.peek().muted) paused.value = true;
    }),
    effect(() => {
      if (openRun.value && settings.value.captions) aided.value = true;
    }),
    effect(() => {
      void [wholeSecond.value, paused.value];
      keepNow();
    }),
    effect(() => {
      void wholeSecond.value;
      const now = live.peek();
      if (now && openRun.value && !finishedRun.peek()) waves?.follow(now.state);
      else waves?.close();
    }),
    effect(() => {
      if (!openRun.value && unkeptRuns() === 0) place?.leave();
    }),
    effect(() => {
      if (ending.value === null || !openRun.peek() || finishedRun.peek()) return;
      keepNow();
      void putAway(onEnd);
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

/** The run is over: onto the shelf with it, and on to the debrief. */
async function putAway(onEnd: (key: number | null) => void): Promise<void> {
  const practice = await practiceNow();
  const { name } = settings.peek();
  const about = { name: name.trim(), by: 'person', aided: aided.peek(), begunAt, checkedAt, practice, ratings: null } as const;
  finishedRun.value = { ...about, key: null };
  const { pulses } = live.peek()!;
  const record = { title: openRun.peek()!.exercise.scenario.title, endedAt: new Date().toISOString(), text: runFileText(), pulses };
  const tell = (key: number | null) => {
    // another run may be open by the time that this one is kept
    if (live.peek()?.pulses !== pulses || !finishedRun.peek()) return;
    finishedRun.value = { ...finishedRun.peek()!, key };
    onEnd(key);
  };
  tell(await putOnShelf(place!, record, tell));
}

function keepNow(): void {
  const [open, now] = [openRun.peek(), live.peek()];
  if (!open || !now || finishedRun.peek() || now.state.tick === 0) return;
  const { log, pulses, state, listener } = now;
  const { scenario } = open.exercise;
  void place?.keep({ scenario, log, pulses, tick: state.tick, thresholdDb: listener.thresholdDb, checkedAt, begunAt });
}

/** The run file of the run that is open, with its grade where that is known. */
export function runFileText(result?: RunResult, name = finishedRun.peek()!.name): string {
  const { by, aided: withCaptions, begunAt: began, checkedAt: checked, practice } = finishedRun.peek()!;
  const about = {
    name,
    by,
    aided: withCaptions,
    checkedAt: checked,
    ...(began ? { begunAt: began } : {}),
    ...(practice ? { practice } : {}),
  };
  return runFileOf(recordingOf(openRun.peek()!.exercise, live.peek()!, result ? { ...about, result } : about));
}
