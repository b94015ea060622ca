import type { Demonstration } from '../../core/listening/demonstration';
import { Key } from '../controls/Key';

type Hint = readonly [keys: string, what: string];

/** The keys that a room needs, and those of this demonstration's own controls. */
export function keyHints(demonstration: Demonstration): readonly Hint[] {
  const own = demonstration.dials.map((dial): Hint => {
    switch (dial.key) {
      case 'walkM':
        return ['S W', dial.choices ? 'back, on' : dial.name.toLowerCase()];
      case 'rollDeg':
        return ['R', 'flat, upright'];
      case 'attenuatorDb':
        return ['[ ]', 'attenuator'];
      case 'offsetHz':
        return [', .', 'tune'];
      default:
        return ['C', dial.name.toLowerCase()];
    }
  });
  return [['← →', 'turn'], ['B', 'both ways'], ...own, ['PgDn', 'next']];
}

export function KeyHints({ demonstration }: { readonly demonstration: Demonstration }) {
  const hints = keyHints(demonstration);
  return (
    <ul class={hints.length > 5 ? 'key-hints key-hints-many' : 'key-hints'} aria-label="Keys">
      {hints.map(([keys, what]) => (
        <li key={keys}>
          {keys.split(' ').map((key) => (
            <Key key={key} name={key} />
          ))}
          <span>{what}</span>
        </li>
      ))}
    </ul>
  );
}

const GAIN_HINT: Hint = ['↑ ↓', 'gain'];
const MORE: readonly Hint[] = [
  ['F', 'face about'],
  ['Space', 'turn right round by itself, or stop'],
  ['K', 'check by ear; 1 to 5 answer'],
  ['P', 'projector'],
  ['I', 'the instructor’s window'],
  ['Shift', 'with gain ten at a time, with a held turn slowly'],
  ['PgUp', 'the demonstration before'],
  ['* / 0', 'louder, softer, sound off'],
  ['Esc', 'back'],
];

export function AllKeys({ demonstration }: { readonly demonstration: Demonstration }) {
  return (
    <dl class="all-keys">
      {[GAIN_HINT, ...keyHints(demonstration), ...MORE].map(([keys, what]) => (
        <div key={keys}>
          <dt>
            {keys.split(' ').map((key) => (
              <Key key={key} name={key} />
            ))}
          </dt>
          <dd>{what}</dd>
        </div>
      ))}
    </dl>
  );
}
