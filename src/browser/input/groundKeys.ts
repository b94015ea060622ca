import { hands } from '../storage/hands';
import { askFor, type Hand } from './askFor';
import { type CommandId, commandOfKey, keyOf } from './commands';

/** With Shift the antenna turns at this share of its speed. */
const FINE = 0.2;
const WAYS: Partial<Record<CommandId, readonly [number, number]>> = {
  walkNorth: [0, 1],
  walkWest: [-1, 0],
  walkSouth: [0, -1],
  walkEast: [1, 0],
};

/** The whole of Ground on a keyboard, by the keys of this device. Held keys turn the antenna and walk; letting go stops. @returns stops listening */
export function groundKeys(target: Window, hand: Hand): () => void {
  const held = new Set<CommandId>();
  const down = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || isTyping(event)) return;
    const key = keyOf(event);
    if ((key === ' ' || key === 'Enter') && onButton(event)) return;
    if (key === 'Shift') {
      if (held.size > 0) spin(true);
      return;
    }
    const id = commandOfKey(hands.peek().keys, key);
    if (!id) return;
    event.preventDefault();
    if (id === 'turnLeft' || id === 'turnRight') {
      held.add(id);
      spin(event.shiftKey);
    } else if (WAYS[id]) {
      held.add(id);
      if (!event.repeat) walk();
    } else askFor(hand, id, { large: event.shiftKey, again: event.repeat });
  };
  const up = (event: KeyboardEvent) => {
    const key = keyOf(event);
    if (key === 'Shift') {
      spin(false);
      return;
    }
    const id = commandOfKey(hands.peek().keys, key);
    if (!id || !held.delete(id)) return;
    if (WAYS[id]) walk();
    else spin(event.shiftKey);
  };
  const letGo = () => {
    const wasWalking = [...held].some((id) => WAYS[id]);
    held.clear();
    spin(false);
    if (wasWalking) walk();
  };
  let spinning = 0;
  function spin(fine: boolean): void {
    const way = (held.has('turnRight') ? 1 : 0) - (held.has('turnLeft') ? 1 : 0);
    const degPerS = way * hands.peek().turnDegPerS * (fine ? FINE : 1);
    if (degPerS === spinning) return;
    spinning = degPerS;
    hand.act({ type: 'spin', degPerS });
  }
  function walk(): void {
    let [east, north] = [0, 0];
    for (const id of held) {
      east += WAYS[id]?.[0] ?? 0;
      north += WAYS[id]?.[1] ?? 0;
    }
    const moving = east !== 0 || north !== 0;
    const courseDeg = moving ? (Math.atan2(east, north) * 180) / Math.PI : 0;
    hand.act({ type: 'walk', courseDeg, paceMPerS: moving ? hand.paceMPerS() : 0 });
  }
  target.addEventListener('keydown', down);
  target.addEventListener('keyup', up);
  target.addEventListener('blur', letGo);
  return () => {
    target.removeEventListener('keydown', down);
    target.removeEventListener('keyup', up);
    target.removeEventListener('blur', letGo);
  };
}

const onButton = ({ target }: KeyboardEvent): boolean =>
  target instanceof HTMLElement && target.closest('button, a, summary, label') !== null;

const isTyping = ({ target }: KeyboardEvent): boolean =>
  target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
