import { signal } from '@preact/signals';
import { toDeg, wrapBearingDeg } from '../../core/units/angles';
import { hands } from '../storage/hands';
import { askFor, type Hand } from './askFor';
import { COMMANDS, type CommandId } from './commands';

/** A gamepad has been touched since the page was opened. */
export const gamepadSeen = signal(false);
/** While a button is being chosen for a command the next one pressed goes here and does nothing else. */
export const choosingButton = signal<((button: number) => void) | null>(null);

export type GamepadHand = Hand & {
  readonly fastestMPerS: () => number;
  /** A run at rest goes on by the button of `mark` and is worked by nothing else than that and pause. */
  readonly resting: () => boolean;
  readonly goOn: () => void;
};

const DEAD_SHARE = 0.22;
/** Degrees of a course that a stick holds still within: else every tremble would be an action of the run. */
const COURSE_STEP_DEG = 5;
const PACE_STEP_M_PER_S = 0.2;
const GAIN_DB_PER_S = 25;
const TUNE_EVERY_MS = 120;
const PRESSED = 0.15;

/**
 * Left stick walks, right stick turns the antenna, triggers are the gain; buttons as this device has them. Looks at the gamepad once
 * a frame, as gamepads tell nothing by themselves. @returns stops looking
 */
export function groundGamepad(hand: GamepadHand): () => void {
  let frame = 0;
  let lastMs = performance.now();
  let before: readonly number[] = [];
  let [spinning, legs] = [0, '0/0'];
  let [owedDb, tunedMs] = [0, 0];

  const look = (nowMs: number) => {
    frame = requestAnimationFrame(look);
    const passedS = Math.min(0.1, (nowMs - lastMs) / 1000);
    lastMs = nowMs;
    const pad = firstGamepad();
    if (!pad) return;
    const pressed = pad.buttons.map(({ pressed: down, value }) => (down ? Math.max(value, 1e-3) : value));
    if (!gamepadSeen.peek() && (pressed.some((value) => value > PRESSED) || pad.axes.some((axis) => Math.abs(axis) > 0.5))) {
      gamepadSeen.value = true;
    }
    const fresh = pressed.flatMap((value, button) => (value > PRESSED && (before[button] ?? 0) <= PRESSED ? [button] : []));
    before = pressed;
    const choosing = choosingButton.peek();
    if (choosing) {
      if (fresh[0] !== undefined) choosing(fresh[0]);
      return;
    }
    for (const button of fresh) press(button);
    if (hand.resting()) return;
    turn(pad.axes[2] ?? 0);
    walk(pad.axes[0] ?? 0, pad.axes[1] ?? 0);
    gain(pressed, passedS);
    tune(pressed, nowMs);
  };

  const press = (button: number) => {
    const id = COMMANDS.find((command) => hands.peek().buttons[command.id] === button)?.id;
    if (!id) return;
    if (id === 'mark' && hand.resting()) hand.goOn();
    else if (id === 'pause') hand.wish(id);
    else if (!hand.resting() && !['gainUp', 'gainDown'].includes(id)) askFor(hand, id, { large: false, again: false });
  };
  const valueOf = (pressed: readonly number[], id: CommandId): number => {
    const button = hands.peek().buttons[id];
    const value = button === null ? 0 : (pressed[button] ?? 0);
    return value > PRESSED ? value : 0;
  };
  const turn = (across: number) => {
    const share = beyondDead(across);
    const { turnDegPerS, sensitivity } = hands.peek();
    // Squared, so that a stick a little off its middle turns slowly; whole degrees, so that a still hand is one action.
    const degPerS = Math.round(Math.sign(across) * share * share * turnDegPerS * 2 * sensitivity);
    if (degPerS === spinning) return;
    spinning = degPerS;
    hand.act({ type: 'spin', degPerS });
  };
  const walk = (across: number, down: number) => {
    const share = beyondDead(Math.min(1, Math.hypot(across, down)));
    const steps = Math.round((share * hand.fastestMPerS()) / PACE_STEP_M_PER_S);
    const courseDeg = wrapBearingDeg(Math.round(toDeg(Math.atan2(across, -down)) / COURSE_STEP_DEG) * COURSE_STEP_DEG);
    const asked = steps === 0 ? '0/0' : `${courseDeg}/${steps}`;
    if (asked === legs) return;
    legs = asked;
    const paceMPerS = Math.min(hand.fastestMPerS(), steps * PACE_STEP_M_PER_S);
    hand.act({ type: 'walk', courseDeg: steps === 0 ? 0 : courseDeg, paceMPerS });
  };
  const gain = (pressed: readonly number[], passedS: number) => {
    const pull = valueOf(pressed, 'gainUp') - valueOf(pressed, 'gainDown');
    if (pull === 0) {
      owedDb = 0;
      return;
    }
    // A short pull is one decibel at once.
    if (owedDb === 0) owedDb = Math.sign(pull);
    else owedDb += pull * GAIN_DB_PER_S * hands.peek().sensitivity * passedS;
    const wholeDb = Math.trunc(owedDb);
    const gainDb = hand.state()?.controls.gainDb;
    if (wholeDb === 0 || gainDb === undefined) return;
    owedDb = owedDb - wholeDb || Math.sign(pull) * 1e-6;
    hand.act({ type: 'setGain', gainDb: gainDb + wholeDb });
  };
  const tune = (pressed: readonly number[], nowMs: number) => {
    for (const id of ['tuneUp', 'tuneDown'] as const) {
      if (valueOf(pressed, id) === 0 || nowMs - tunedMs < TUNE_EVERY_MS) continue;
      tunedMs = nowMs;
      askFor(hand, id, { large: false, again: true });
    }
  };

  frame = requestAnimationFrame(look);
  return () => cancelAnimationFrame(frame);
}

const beyondDead = (value: number): number => Math.max(0, (Math.abs(value) - DEAD_SHARE) / (1 - DEAD_SHARE));

function firstGamepad(): Gamepad | null {
  if (typeof navigator.getGamepads !== 'function') return null;
  for (const pad of navigator.getGamepads()) if (pad?.connected) return pad;
  return null;
}
