import { batch, computed, effect, signal } from '@preact/signals';
import type { Action } from '../core/run/actions';
import type { Exercise } from '../core/run/exercise';
import { type Deed, isHeldUp } from '../core/run/intervention';
import { actedAtRest, type Live } from '../core/run/live';
import { type Silence, silencesAmong } from '../core/run/silence';
import { briefNow } from '../core/run/stages';
import { onFootM, type RunState } from '../core/run/state';
import { step } from '../core/run/step';
import { type CheckBeep, checkBeepsAmong } from '../core/run/tagCheck';
import type { MapPoint } from '../core/units/frames';
import { heardSince, type RingMark } from './heardRing';
import type { LandDrawing } from './map/landDrawing';

/** The run that is being played, and all that changes with it. Nothing else in the program is mutable. */
export type OpenRun = { readonly exercise: Exercise; readonly land: LandDrawing };

export const openRun = signal<OpenRun | null>(null);
export const live = signal<Live | null>(null);
export const paused = signal(true);
/** Headings at which something was heard: what the sound ring shows. */
export const ring = signal<readonly RingMark[]>([]);
/** The line walked, a point every two metres. */
export const track = signal<readonly MapPoint[]>([]);

/** Beeps that were due and not heard, since the run began: what ground is ruled out by. */
export const silences = signal<readonly Silence[]>([]);

/** Beeps heard before leaving: what the tag check asks for. */
export const checkBeeps = signal<readonly CheckBeep[]>([]);

export const runState = computed(() => live.value?.state ?? null);
export const holdNow = computed(() => runState.value?.hold ?? null);
export const controlsNow = computed(() => runState.value?.controls ?? null);
export const legsNow = computed(() => runState.value?.legs ?? null);
export const notebook = computed(() => runState.value?.notebook ?? []);
export const wholeSecond = computed(() => Math.floor((runState.value?.tick ?? 0) / 20));
export const walkedM = computed(() => Math.round(runState.value ? onFootM(runState.value) : 0));
export const ending = computed(() => runState.value?.ending ?? null);
export const lastPulse = computed(() => live.value?.pulses.at(-1)?.heard ?? null);
/** What is to be done now: the brief, or the last text that came on the way. */
export const taskText = computed(() => {
  const scenario = openRun.value?.exercise.scenario;
  return scenario ? briefNow(scenario, runState.value) : '';
});
/** The run rests because a text has come that is yet to be read. */
export const textCame = signal(false);
/** An instructor's window on this machine looks at this run. */
export const instructorThere = signal(false);
/** The instructor has stopped the run; with his window gone it is the walker's again. */
export const heldUp = computed(() => instructorThere.value && isHeldUp(runState.value?.interventions ?? []));
/** The run with what was asked for since its last tick: sound follows the hand at once, the log at the next tick. */
const asked = signal<RunState | null>(null);
export const askedState = computed(() => asked.value ?? runState.value);

const TRACK_STEP_M = 2;
let queue: Action[] = [];

/** Finer than a hand can point: digits below it would only lengthen the run file. */
const POINTS_A_DEGREE = 10;
const asPointed = (toDeg: number): number => (Math.round(toDeg * POINTS_A_DEGREE) / POINTS_A_DEGREE) % 360;

/** Puts an action into the next tick. Of several turns within one tick only the last one counts. */
export function act(action: Action): void {
  if (paused.peek() && !['strikeOut', 'unstrike', 'changeAntenna', 'giveUp'].includes(action.type)) return;
  queue =
    action.type === 'turn'
      ? [...queue.filter(({ type }) => type !== 'turn'), { type: 'turn', toDeg: asPointed(action.toDeg) }]
      : [...queue, action];
  asked.value = comingState();
}

/** Done at once, also while the run rests: an instructor does not wait for it to go on. */
export function actOfInstructor(deed: Deed): void {
  const [open, now] = [openRun.peek(), live.peek()];
  if (!open || !now || now.state.ending !== null) return;
  const next = actedAtRest(open.exercise, now, [deed]);
  if (next.state.interventions === now.state.interventions) return;
  batch(() => {
    live.value = next;
    asked.value = queue.length === 0 ? null : comingState();
    if (deed.type === 'holdUp') paused.value = deed.held;
  });
}

export function takeActions(): readonly Action[] {
  const taken = queue;
  queue = [];
  return taken;
}

/** The state once everything asked for has been done: what a key that says "one more" counts from. */
export function comingState(): RunState | null {
  const [open, now] = [openRun.peek(), live.peek()];
  return open && now ? queue.reduce((state, action) => step(open.exercise.scenario, state, action), now.state) : null;
}

/** Takes in what a tick made of the run. */
export function keepTick(next: Live): void {
  const before = live.peek();
  ring.value = heardSince(ring.peek(), before, next);
  const last = track.peek().at(-1);
  const { at } = next.state;
  if (!last || Math.hypot(at.eM - last.eM, at.nM - last.nM) >= TRACK_STEP_M) track.value = [...track.peek(), at];
  const begun = before ? next.pulses.slice(before.pulses.length) : [];
  const unheard = before && begun.length > 0 ? silencesAmong(openRun.peek()!.exercise.scenario, before.state, begun) : [];
  const checked = before && begun.length > 0 ? checkBeepsAmong(before.state, begun) : [];
  if (checked.length > 0) checkBeeps.value = [...checkBeeps.peek(), ...checked];
  if (unheard.length > 0) silences.value = [...silences.peek(), ...unheard];
  batch(() => {
    live.value = next;
    asked.value = queue.length === 0 ? null : comingState();
    if (before && next.state.stages.length > before.state.stages.length) [textCame.value, paused.value] = [true, true];
  });
}

// Whoever goes on has read it.
effect(() => {
  if (!paused.value) textCame.value = false;
});

/** A run to be shown: how far it has come, and what is kept of the way there beside its state. */
export type Come = {
  readonly live: Live;
  readonly walked: readonly MapPoint[];
  readonly silences: readonly Silence[];
  readonly checkBeeps: readonly CheckBeep[];
};

export const justBegun = (live: Live): Come => ({ live, walked: [live.state.at], silences: [], checkBeeps: [] });

export function showRun(open: OpenRun, { live: begun, walked, silences: unheard, checkBeeps: heardFirst }: Come): void {
  queue = [];
  asked.value = null;
  openRun.value = open;
  ring.value = [];
  silences.value = unheard;
  checkBeeps.value = heardFirst;
  track.value = walked;
  textCame.value = false;
  live.value = begun;
  paused.value = true;
}

export function leaveRun(): void {
  queue = [];
  asked.value = null;
  openRun.value = null;
  live.value = null;
  ring.value = [];
  silences.value = [];
  checkBeeps.value = [];
  track.value = [];
  paused.value = true;
}
