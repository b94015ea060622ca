import type { Action } from '../../core/run/actions';
import type { RunState } from '../../core/run/state';
import type { CommandId } from './commands';

/** What a hand on keys or a gamepad reaches. */
export type Hand = {
  readonly state: () => RunState | null;
  readonly paceMPerS: () => number;
  readonly act: (action: Action) => void;
  /** Whatever is asked for that is not an action of the run. */
  readonly wish: (id: CommandId) => void;
  readonly look: (dxPx: number, dyPx: number) => void;
};

const LOOK_PX = 60;
const LOOKS: Partial<Record<CommandId, readonly [number, number]>> = {
  lookUp: [0, 1],
  lookLeft: [1, 0],
  lookDown: [0, -1],
  lookRight: [-1, 0],
};
/** A held key does these again and again. */
const AGAIN: readonly CommandId[] = ['gainUp', 'gainDown', 'tuneUp', 'tuneDown'];

/** Does what was asked for; `large` is five times as much gain and a fifth of the tuning. */
export function askFor(hand: Hand, id: CommandId, { large, again }: { readonly large: boolean; readonly again: boolean }): void {
  const look = LOOKS[id];
  if (look) {
    hand.look(look[0] * LOOK_PX, look[1] * LOOK_PX);
    return;
  }
  if (again && !AGAIN.includes(id)) return;
  const state = hand.state();
  const action = state && actionOf(id, state, large);
  if (action) hand.act(action);
  else hand.wish(id);
}

function actionOf(id: CommandId, { controls, hold }: RunState, large: boolean): Action | null {
  const gainDb = large ? 5 : 1;
  const tuneMHz = (large ? 10 : 50) / 1e6;
  const attenuator = (by: number): Action => ({
    type: 'setAttenuator',
    attenuatorDb: Math.min(30, Math.max(0, controls.attenuatorDb + by)),
  });
  switch (id) {
    case 'gainUp':
      return { type: 'setGain', gainDb: controls.gainDb + gainDb };
    case 'gainDown':
      return { type: 'setGain', gainDb: controls.gainDb - gainDb };
    case 'tuneDown':
      return { type: 'tune', tunedMHz: controls.tunedMHz - tuneMHz };
    case 'tuneUp':
      return { type: 'tune', tunedMHz: controls.tunedMHz + tuneMHz };
    case 'attenuatorLess':
      return attenuator(-10);
    case 'attenuatorMore':
      return attenuator(10);
    case 'axis':
      return { type: 'roll', toDeg: hold.rollDeg >= 45 ? 0 : 90 };
    case 'raise':
      return { type: 'raise', raised: !hold.raised };
    case 'mark':
      return { type: 'mark' };
    case 'beat':
      return { type: 'beat' };
    case 'declare':
      return { type: 'declare' };
    default:
      return null;
  }
}
