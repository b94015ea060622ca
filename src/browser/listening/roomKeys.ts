import type { Dial } from '../../core/listening/settings';
import { change as changeDevice, settings as deviceSettings, stepVolume } from '../storage/settings';
import { check, chooseAnswer, closeCheck, openCheck } from './earCheck';
import { hearOtherWay, projector, set, settings, showNext, shown, spinDegPerS } from './roomState';

const TURN_DEG_PER_S = 60;
const FINE_DEG_PER_S = 12;
const ROUND_DEG_PER_S = 30;
const TURN_STEP_DEG = 3;
const GAIN_STEP_DB = 2;
const COARSE_GAIN_DB = 10;

/** A key as the room or the instructor's window had it. */
export type Press = { readonly key: string; readonly shift: boolean; readonly repeat: boolean };

/** Wishes that need more than the room's state. */
export type KeyDoors = { readonly openNotes: () => void; readonly toggleKeys: () => void; readonly leave: () => void };

/** Acts on a key going down. @returns whether the key means anything here */
export function press({ key: raw, shift, repeat }: Press, doors: KeyDoors): boolean {
  const key = raw.length === 1 ? raw.toLowerCase() : raw;
  if (check.peek() && /^[1-5]$/.test(key)) return chooseAnswer(Number(key) - 1);
  if (turned(key, shift, repeat) || stepped(key, shift) || (!repeat && switched(key, doors))) return true;
  return false;
}

function turned(key: string, shift: boolean, repeat: boolean): boolean {
  if (key !== 'ArrowLeft' && key !== 'ArrowRight') return false;
  const way = key === 'ArrowRight' ? 1 : -1;
  if (!repeat) set({ headingDeg: settings.peek().headingDeg + way * TURN_STEP_DEG });
  spinDegPerS.value = repeat ? way * (shift ? FINE_DEG_PER_S : TURN_DEG_PER_S) : 0;
  return true;
}

/** Letting an arrow go stops the antenna. */
export function release(key: string): void {
  if (key === 'ArrowLeft' || key === 'ArrowRight') spinDegPerS.value = 0;
}

/** Keys that move a control by a step: the control's own key, less and more. */
const STEP_KEYS: Readonly<Partial<Record<Dial['key'], readonly [string, string]>>> = {
  attenuatorDb: ['[', ']'],
  walkM: ['s', 'w'],
  offsetHz: [',', '.'],
};

function stepped(key: string, shift: boolean): boolean {
  if (key === 'ArrowUp' || key === 'ArrowDown') {
    set({ gainDb: settings.peek().gainDb + (key === 'ArrowUp' ? 1 : -1) * (shift ? COARSE_GAIN_DB : GAIN_STEP_DB) });
    return true;
  }
  for (const dial of shown.peek().dials) {
    const keys = STEP_KEYS[dial.key];
    const way = keys ? keys.indexOf(key) : -1;
    if (way < 0) continue;
    set({ [dial.key]: settings.peek()[dial.key] + (way === 1 ? dial.step : -dial.step) });
    return true;
  }
  const round = shown.peek().dials.find((dial) => (dial.key === 'rollDeg' && key === 'r') || (dial.key === 'choice' && key === 'c'));
  if (!round) return false;
  const next = settings.peek()[round.key] + round.step;
  set({ [round.key]: next > round.to ? round.from : next });
  return true;
}

function switched(key: string, doors: KeyDoors): boolean {
  const does: Readonly<Record<string, () => void>> = {
    b: hearOtherWay,
    f: () => set({ headingDeg: settings.peek().headingDeg + 180 }),
    ' ': () => {
      spinDegPerS.value = spinDegPerS.peek() === 0 ? ROUND_DEG_PER_S : 0;
    },
    PageDown: () => showNext(1),
    n: () => showNext(1),
    PageUp: () => showNext(-1),
    p: () => {
      projector.value = !projector.peek();
    },
    k: () => (check.peek() ? closeCheck() : openCheck()),
    i: doors.openNotes,
    '?': doors.toggleKeys,
    '*': () => stepVolume(1),
    '/': () => stepVolume(-1),
    '0': () => changeDevice({ muted: !deviceSettings.peek().muted }),
    Escape: () => goBack(doors),
  };
  does[key]?.();
  return does[key] !== undefined;
}

function goBack(doors: KeyDoors): void {
  if (check.peek()) closeCheck();
  else if (projector.peek()) projector.value = false;
  else doors.leave();
}

/** The whole room on a keyboard. @returns stops listening */
export function roomKeys(target: Window, doors: KeyDoors): () => void {
  const down = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const on = event.target instanceof HTMLElement ? event.target : null;
    if (on?.closest('input, select, textarea')) return;
    if (on?.closest('button, a, summary') && (event.key === ' ' || event.key === 'Enter')) return;
    if (press({ key: event.key, shift: event.shiftKey, repeat: event.repeat }, doors)) event.preventDefault();
  };
  const up = (event: KeyboardEvent) => release(event.key);
  const letGo = () => {
    spinDegPerS.value = 0;
  };
  target.addEventListener('keydown', down);
  target.addEventListener('keyup', up);
  target.addEventListener('blur', letGo);
  return () => {
    target.removeEventListener('keydown', down);
    target.removeEventListener('keyup', up);
    target.removeEventListener('blur', letGo);
  };
}
