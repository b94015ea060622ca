import { Key } from '../controls/Key';
import { pin, reachable, stage, trial, truthShown } from './drillState';

type Hint = readonly [keys: string, what: string];

/** The keys that mean something now. */
function hintsNow(): readonly Hint[] {
  const given = trial.value;
  if (!given) return [];
  const hints: Hint[] = [];
  if (pin.value && stage.value === 'trial') hints.push(['← → ↑ ↓', 'move the pin (Shift: farther)']);
  else {
    if (reachable('headingDeg') || truthShown.value) hints.push(['← →', 'turn (Shift: finely)'], ['F', 'turn about']);
    if (reachable('gainDb') || truthShown.value) hints.push(['↑ ↓', 'gain (Shift: 5 dB)']);
    if (reachable('rollDeg')) hints.push(['R', 'other axis']);
    if (reachable('walkM')) hints.push(['S W', 'back, on']);
    if (reachable('offsetHz')) hints.push([', .', 'dial (Shift: farther)']);
    if (given.answer.kind === 'amount') hints.push([', .', 'distance (Shift: farther)']);
  }
  return [...hints, ['* /', 'volume'], ['Esc', 'out']];
}

export function KeyLine() {
  return (
    <ul class="drill-keys quiet" aria-label="Keys">
      {hintsNow().map(([keys, what]) => (
        <li key={what}>
          {keys.split(' ').map((key) => (
            <Key key={key} name={key} />
          ))}{' '}
          {what}
        </li>
      ))}
    </ul>
  );
}
