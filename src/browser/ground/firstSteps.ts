import { computed, effect, signal } from '@preact/signals';
import type { RunState } from '../../core/run/state';
import { turnDeg } from '../../core/units/angles';
import { paused, runState } from '../currentRun';
import { change, settings } from '../storage/settings';

/** What a first run shows of the controls, one at a time, each until it was done. */
export const FIRST_STEPS = ['turn', 'gain', 'walk', 'mark'] as const;
export type FirstStep = (typeof FIRST_STEPS)[number];

/** What a person's hands are at: the line says what to do with those. */
export type HandsOn = 'keys' | 'touch' | 'mouse';
export const handsOn = signal<HandsOn>('keys');

const TURNED_DEG = 30;
const LOWERED_DB = 5;
const WALKED_M = 6;
/** The last words stand so long, ms. */
const LAST_MS = 5_000;

const at = signal(0);
const from = signal<RunState | null>(null);
const ended = signal(false);

export const stepNow = computed<FirstStep | 'last' | null>(() => {
  if (settings.value.controlsShown) return ended.value ? 'last' : null;
  return FIRST_STEPS[at.value] ?? null;
});

/** Has a step been done since it was shown? */
export function isDone(step: FirstStep, before: RunState, now: RunState): boolean {
  switch (step) {
    case 'turn':
      return Math.abs(turnDeg(before.hold.headingDeg, now.hold.headingDeg)) >= TURNED_DEG;
    case 'gain':
      return before.controls.gainDb - now.controls.gainDb >= LOWERED_DB || now.controls.gainDb === 0;
    case 'walk':
      return now.walkedM - before.walkedM >= WALKED_M;
    case 'mark':
      return now.notebook.length > before.notebook.length;
  }
}

export function skipFirstMinute(): void {
  change({ controlsShown: true });
}

/** Follows the run as long as there is something to show, and what the hands are at. @returns stops */
export function followFirstMinute(target: Window): () => void {
  at.value = 0;
  from.value = null;
  ended.value = false;
  handsOn.value = target.matchMedia('(pointer: coarse)').matches ? 'touch' : 'keys';
  let timer = 0;
  const stop = effect(() => {
    const [step, now] = [FIRST_STEPS[at.value], runState.value];
    if (settings.value.controlsShown || !step || !now || paused.value) return;
    const before = from.peek();
    if (!before) from.value = now;
    else if (isDone(step, before, now)) {
      from.value = now;
      if (at.peek() + 1 < FIRST_STEPS.length) {
        at.value = at.peek() + 1;
        return;
      }
      ended.value = true;
      change({ controlsShown: true });
      timer = target.setTimeout(() => {
        ended.value = false;
      }, LAST_MS);
    }
  });
  const again = effect(() => {
    if (settings.value.controlsShown) return;
    [at.value, from.value, ended.value] = [0, null, false];
  });
  const onKey = () => {
    handsOn.value = 'keys';
  };
  const onPointer = ({ pointerType }: PointerEvent) => {
    handsOn.value = pointerType === 'mouse' ? 'mouse' : 'touch';
  };
  target.addEventListener('keydown', onKey, true);
  target.addEventListener('pointerdown', onPointer, true);
  return () => {
    stop();
    again();
    target.clearTimeout(timer);
    target.removeEventListener('keydown', onKey, true);
    target.removeEventListener('pointerdown', onPointer, true);
  };
}
