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
/** Done for as long as the button is held, not once. */
const HELD: readonly CommandId[] = ['gainUp', 'gainDown', 'tuneUp', 'tuneDown'];

/**
 * Left stick walks, right stick turns the antenna, triggers are the gain; buttons as this device has them. Looks at the gamepad once
 * a frame, as gamepads tell nothing by themselves. @returns stops looking
 */
export function groundGamepad(hand: GamepadHand): () => void {
  let frame = 0;
  let lastMs = performance.now();
  let before: readonly number[] = [];
  const [turn, walk, gain, tune] = [antennaStick(hand), walkStick(hand), gainTriggers(hand), tuneButtons(hand)];
  const look = (nowMs: number) => {
    frame = requestAnimationFrame(look);
    const passedS = Math.min(0.1, (nowMs - lastMs) / 1000);
    lastMs = nowMs;
    const pad = firstGamepad();
    if (!pad) return;
    const pulls = pad.buttons.map(({ pressed, value }) => (pressed ? Math.max(value, PRESSED * 2) : value));
    const fresh = pulls.flatMap((pull, button) => (pull > PRESSED && (before[button] ?? 0) <= PRESSED ? [button] : []));
    before = pulls;
    if (!gamepadSeen.peek()) gamepadSeen.value = fresh.length > 0 || pad.axes.some((axis) => Math.abs(axis) > 0.5);
    const choosing = choosingButton.peek();
    if (choosing) {
      if (fresh[0] !== undefined) choosing(fresh[0]);
      return;
    }
    for (const button of fresh) press(hand, button);
    if (hand.resting()) return;
    turn(pad.axes[2] ?? 0);
    walk(pad.axes[0] ?? 0, pad.axes[1] ?? 0);
    gain(pulls, passedS);
    tune(pulls, nowMs);
  };
  frame = requestAnimationFrame(look);
  return () => cancelAnimationFrame(frame);
}

function press(hand: GamepadHand, button: number): void {
  const id = COMMANDS.find((command) => hands.peek().buttons[command.id] === button)?.id;
  if (!id) return;
  if (id === 'mark' && hand.resting()) hand.goOn();
  else if (id === 'pause') hand.wish(id);
  else if (!hand.resting() && !HELD.includes(id)) askFor(hand, id, { large: false, again: false });
}

function pullOf(pulls: readonly number[], id: CommandId): number {
  const button = hands.peek().buttons[id];
  const pull = button === null ? 0 : (pulls[button] ?? 0);
  return pull > PRESSED ? pull : 0;
}

function antennaStick(hand: GamepadHand): (across: number) => void {
  let spinning = 0;
  return (across) => {
    const share = beyondDead(across);
    const { turnDegPerS, sensitivity } = hands.peek();
    // Squared, so that a stick a little off its middle turns slowly; whole degrees, so that a still hand is one action.
    const degPerS = Math.sign(across) * Math.round(share * share * turnDegPerS * 2 * sensitivity);
    if (degPerS === spinning) return;
    spinning = degPerS;
    hand.act({ type: 'spin', degPerS });
  };
}

function walkStick(hand: GamepadHand): (across: number, down: number) => void {
  let walking = 'not';
  return (across, down) => {
    const share = beyondDead(Math.min(1, Math.hypot(across, down)));
    const steps = Math.round((share * hand.fastestMPerS()) / PACE_STEP_M_PER_S);
    const courseDeg = wrapBearingDeg(Math.round(toDeg(Math.atan2(across, -down)) / COURSE_STEP_DEG) * COURSE_STEP_DEG);
    const asked = steps === 0 ? 'not' : `${courseDeg}/${steps}`;
    if (asked === walking) return;
    walking = asked;
    const paceMPerS = Math.min(hand.fastestMPerS(), steps * PACE_STEP_M_PER_S);
    hand.act({ type: 'walk', courseDeg: steps === 0 ? 0 : courseDeg, paceMPerS });
  };
}

/** A short pull is one decibel at once; a held one goes on as fast as it is pulled. */
function gainTriggers(hand: GamepadHand): (pulls: readonly number[], passedS: number) => void {
  let owedDb: number | null = null;
  return (pulls, passedS) => {
    const pull = pullOf(pulls, 'gainUp') - pullOf(pulls, 'gainDown');
    if (pull === 0) {
      owedDb = null;
      return;
    }
    owedDb = owedDb === null ? Math.sign(pull) : owedDb + pull * GAIN_DB_PER_S * hands.peek().sensitivity * passedS;
    const wholeDb = Math.trunc(owedDb);
    const gainDb = hand.state()?.controls.gainDb;
    if (wholeDb === 0 || gainDb === undefined) return;
    owedDb -= wholeDb;
    hand.act({ type: 'setGain', gainDb: gainDb + wholeDb });
  };
}

function tuneButtons(hand: GamepadHand): (pulls: readonly number[], nowMs: number) => void {
  let lastMs = 0;
  return (pulls, nowMs) => {
    for (const id of ['tuneUp', 'tuneDown'] as const) {
      if (pullOf(pulls, id) === 0 || nowMs - lastMs < TUNE_EVERY_MS) continue;
      lastMs = nowMs;
      askFor(hand, id, { large: false, again: true });
    }
  };
}

const beyondDead = (value: number): number => Math.max(0, (Math.abs(value) - DEAD_SHARE) / (1 - DEAD_SHARE));

function firstGamepad(): Gamepad | null {
  if (typeof navigator.getGamepads !== 'function') return null;
  for (const pad of navigator.getGamepads()) if (pad?.connected) return pad;
  return null;
}
