import type { Action } from '../../core/run/actions';
import type { RunState } from '../../core/run/state';

/** What keys ask for that is not an action of the run. */
export type Wish =
  | 'pause'
  | 'keys'
  | 'pin'
  | 'place-pin'
  | 'leave-pin'
  | 'fix'
  | 'tags'
  | 'walk'
  | 'faster'
  | 'slower'
  | 'closer'
  | 'farther'
  | 'centre'
  | 'louder'
  | 'softer'
  | 'mute';
export type Listening = {
  readonly state: () => RunState | null;
  readonly paceMPerS: () => number;
  readonly act: (action: Action) => void;
  readonly wish: (wish: Wish) => void;
  readonly look: (dxPx: number, dyPx: number) => void;
};

const TURN_DEG_PER_S = 45;
const FINE_DEG_PER_S = 9;
const LOOK_PX = 60;
const WISHES: Readonly<Record<string, Wish>> = {
  p: 'pause',
  '?': 'keys',
  g: 'pin',
  t: 'fix',
  n: 'tags',
  Enter: 'place-pin',
  Escape: 'leave-pin',
  ' ': 'walk',
  x: 'faster',
  z: 'slower',
  '+': 'closer',
  '=': 'closer',
  '-': 'farther',
  c: 'centre',
  '*': 'louder',
  '/': 'softer',
  '0': 'mute',
};
const WAYS: Readonly<Record<string, readonly [number, number]>> = { w: [0, 1], a: [-1, 0], s: [0, -1], d: [1, 0] };
const LOOKS: Readonly<Record<string, readonly [number, number]>> = { i: [0, 1], j: [1, 0], k: [0, -1], l: [-1, 0] };

/** The whole of Ground on a keyboard. Held keys turn the antenna and walk; letting go stops. @returns stops listening */
export function groundKeys(target: Window, { state, paceMPerS, act, wish, look }: Listening): () => void {
  const held = new Set<string>();
  const down = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event)) return;
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    const now = state();
    const onButton = event.target instanceof HTMLElement && event.target.closest('button, a, summary') !== null;
    if (onButton && (key === ' ' || key === 'Enter')) return;
    if (key === 'ArrowLeft' || key === 'ArrowRight' || key === 'Shift') {
      if (key !== 'Shift') held.add(key);
      if (key !== 'Shift' || held.size > 0) spin(event.shiftKey);
    } else if (WAYS[key]) {
      held.add(key);
      if (!event.repeat) walk();
    } else if (LOOKS[key]) look(LOOKS[key][0] * LOOK_PX, LOOKS[key][1] * LOOK_PX);
    else if (now && handled(event, key, now)) void 0;
    else if (WISHES[key] && !event.repeat) wish(WISHES[key]);
    else return;
    event.preventDefault();
  };
  const up = (event: KeyboardEvent) => {
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    if (key === 'Shift') spin(false);
    if (!held.delete(key)) return;
    if (WAYS[key]) walk();
    else spin(event.shiftKey);
  };
  const letGo = () => {
    const wasWalking = [...held].some((key) => WAYS[key]);
    held.clear();
    spin(false);
    if (wasWalking) walk();
  };
  let spinning = 0;
  function spin(fine: boolean): void {
    const way = (held.has('ArrowRight') ? 1 : 0) - (held.has('ArrowLeft') ? 1 : 0);
    const degPerS = way * (fine ? FINE_DEG_PER_S : TURN_DEG_PER_S);
    if (degPerS === spinning) return;
    spinning = degPerS;
    act({ type: 'spin', degPerS });
  }
  function walk(): void {
    let [east, north] = [0, 0];
    for (const key of held) {
      east += WAYS[key]?.[0] ?? 0;
      north += WAYS[key]?.[1] ?? 0;
    }
    const moving = east !== 0 || north !== 0;
    act({ type: 'walk', courseDeg: moving ? (Math.atan2(east, north) * 180) / Math.PI : 0, paceMPerS: moving ? paceMPerS() : 0 });
  }
  function handled(event: KeyboardEvent, key: string, now: RunState): boolean {
    const action = actionOf(event, key, now);
    if (!action) return false;
    if (!event.repeat || action.type === 'setGain' || action.type === 'tune') act(action);
    return true;
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

const isTyping = ({ target }: KeyboardEvent): boolean =>
  target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;

function actionOf(event: KeyboardEvent, key: string, { controls, hold }: RunState): Action | null {
  const coarse = event.shiftKey ? 5 : 1;
  const tuneHz = event.shiftKey ? 10 : 50;
  const attenuator = (by: number): Action => ({
    type: 'setAttenuator',
    attenuatorDb: Math.min(30, Math.max(0, controls.attenuatorDb + by)),
  });
  switch (key) {
    case 'ArrowUp':
      return { type: 'setGain', gainDb: controls.gainDb + coarse };
    case 'ArrowDown':
      return { type: 'setGain', gainDb: controls.gainDb - coarse };
    case ',':
    case '<':
      return { type: 'tune', tunedMHz: controls.tunedMHz - tuneHz / 1e6 };
    case '.':
    case '>':
      return { type: 'tune', tunedMHz: controls.tunedMHz + tuneHz / 1e6 };
    case '[':
    case '{':
      return attenuator(-10);
    case ']':
    case '}':
      return attenuator(10);
    case 'r':
      return { type: 'roll', toDeg: hold.rollDeg >= 45 ? 0 : 90 };
    case 'e':
      return { type: 'raise', raised: !hold.raised };
    case 'm':
      return { type: 'mark' };
    case 'f':
      return { type: 'declare' };
    default:
      return null;
  }
}
