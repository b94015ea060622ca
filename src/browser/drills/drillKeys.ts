import type { SettingId, Settings } from '../../core/listening/settings';
import { change as changeDevice, settings as deviceSettings, stepVolume } from '../storage/settings';
import { begin, choose, confirm, leaveExample, next, takeBack } from './drillPlay';
import { amount, lines, pin, reachable, set, settings, spinDegPerS, stage, trial, truthShown } from './drillState';
import { playTakes } from './takes';

const TURN_DEG_PER_S = 60;
const FINE_DEG_PER_S = 12;
const TURN_STEP_DEG = 2;
const COARSE_GAIN_DB = 5;
const COARSE_TUNING = 10;
/** One press makes the amount this much more or less. */
const AMOUNT_RATIO = 1.05;
const COARSE_AMOUNT_RATIO = 1.25;
/** One press moves the pin by this share of the plan. */
const PIN_SHARE = 1 / 90;

type Pressed = { readonly key: string; readonly shift: boolean; readonly repeat: boolean };

/** The whole drill on a keyboard. @returns stops listening */
export function drillKeys(leave: () => void): () => void {
  const down = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const on = event.target instanceof HTMLElement ? event.target : null;
    if (on?.closest('input, select, textarea')) return;
    if (on?.closest('button, a, summary') && (event.key === ' ' || event.key === 'Enter')) return;
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    if (press({ key, shift: event.shiftKey, repeat: event.repeat }, leave)) event.preventDefault();
  };
  const up = (event: KeyboardEvent) => {
    if (event.key === 'ArrowLeft' || event.key === 'ArrowRight') spinDegPerS.value = 0;
  };
  const letGo = () => {
    spinDegPerS.value = 0;
  };
  addEventListener('keydown', down);
  addEventListener('keyup', up);
  addEventListener('blur', letGo);
  return () => {
    removeEventListener('keydown', down);
    removeEventListener('keyup', up);
    removeEventListener('blur', letGo);
  };
}

/** @returns whether the key means anything here */
function press(pressed: Pressed, leave: () => void): boolean {
  const { key, repeat } = pressed;
  if (key === 'Escape') {
    leave();
    return true;
  }
  if (volume(key)) return true;
  if (stage.peek() === 'waiting') {
    if (key !== 'Enter' && key !== ' ') return false;
    begin();
    return true;
  }
  if (/^[1-4]$/.test(key) && !repeat) return choose(Number(key) - 1);
  if (key === 'Enter') {
    if (!repeat) goOn();
    return true;
  }
  return movePin(pressed) || turned(pressed) || stepped(pressed) || switched(pressed);
}

function goOn(): void {
  if (stage.peek() === 'example') leaveExample();
  else if (stage.peek() === 'verdict') next();
  else confirm();
}

function volume(key: string): boolean {
  if (key === '*') stepVolume(1);
  else if (key === '/') stepVolume(-1);
  else if (key === '0') changeDevice({ muted: !deviceSettings.peek().muted });
  else return false;
  return true;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function movePin({ key, shift }: Pressed): boolean {
  const [at, way, given] = [pin.peek(), ARROWS[key], trial.peek()];
  if (!at || !way || stage.peek() !== 'trial' || !given?.plan) return false;
  const plan = given.plan(settings.peek(), lines.peek());
  const step = (plan.to[0] - plan.from[0]) * PIN_SHARE * (shift ? 5 : 1);
  pin.value = [Math.round(at[0] + way[0] * step), Math.round(at[1] + way[1] * step)];
  return true;
}

function turned({ key, shift, repeat }: Pressed): boolean {
  if ((key !== 'ArrowLeft' && key !== 'ArrowRight') || !(reachable('headingDeg') || truthShown.peek())) return false;
  const way = key === 'ArrowRight' ? 1 : -1;
  if (!repeat) set({ headingDeg: settings.peek().headingDeg + way * TURN_STEP_DEG });
  spinDegPerS.value = repeat ? way * (shift ? FINE_DEG_PER_S : TURN_DEG_PER_S) : 0;
  return true;
}

/** Controls that keys move by a step: less and more. */
const STEP_KEYS: readonly { readonly id: SettingId; readonly keys: readonly [string, string]; readonly coarse: number }[] = [
  { id: 'gainDb', keys: ['ArrowDown', 'ArrowUp'], coarse: COARSE_GAIN_DB },
  { id: 'walkM', keys: ['s', 'w'], coarse: 1 },
  { id: 'offsetHz', keys: [',', '.'], coarse: COARSE_TUNING },
];

function stepped({ key, shift }: Pressed): boolean {
  if (trial.peek()?.answer.kind === 'amount' && (key === ',' || key === '.' || key === '<' || key === '>')) {
    const ratio = shift ? COARSE_AMOUNT_RATIO : AMOUNT_RATIO;
    setAmount(key === '.' || key === '>' ? amount.peek() * ratio : amount.peek() / ratio);
    return true;
  }
  for (const { id, keys, coarse } of STEP_KEYS) {
    const plain = key === '<' ? ',' : key === '>' ? '.' : key;
    const way = keys.indexOf(plain);
    const dial = trial.peek()?.dials.find((one) => one.key === id);
    if (way < 0 || !(dial || (id === 'gainDb' && truthShown.peek()))) continue;
    const step = (dial?.step ?? 1) * (shift ? coarse : 1);
    set({ [id]: settings.peek()[id] + (way === 1 ? step : -step) } as Partial<Settings>);
    return true;
  }
  return false;
}

/** To two figures below 1,000 m and to ten metres above: nobody says it finer. */
export function setAmount(wanted: number): void {
  const way = trial.peek()?.answer;
  if (way?.kind !== 'amount' || stage.peek() !== 'trial') return;
  const grain = wanted < 300 ? 5 : 10;
  const rounded = Math.round(wanted / grain) * grain;
  const moved = rounded === amount.peek() ? rounded + Math.sign(wanted - rounded) * grain : rounded;
  amount.value = Math.min(way.to, Math.max(way.from, moved));
}

function switched({ key, repeat }: Pressed): boolean {
  if (repeat) return false;
  if (key === 'f' && (reachable('headingDeg') || truthShown.peek())) set({ headingDeg: settings.peek().headingDeg + 180 });
  else if (key === 'r' && reachable('rollDeg')) set({ rollDeg: settings.peek().rollDeg === 0 ? 90 : 0 });
  else if (key === ' ' && stage.peek() === 'trial' && trial.peek()?.takes) playTakes();
  else if (key === 'Backspace') takeBack();
  else return false;
  return true;
}
