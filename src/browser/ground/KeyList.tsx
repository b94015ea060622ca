const KEYS: readonly (readonly [string, string])[] = [
  ['← →', 'turn the antenna, with Shift slowly'],
  ['↑ ↓', 'gain 1 dB, with Shift 5 dB'],
  ['[ ]', 'attenuator'],
  [', .', 'tune 50 Hz, with Shift 10 Hz'],
  ['R', 'antenna flat or upright'],
  ['E', 'antenna raised or at the chest'],
  ['W A S D', 'walk north, west, south, east'],
  ['Space', 'walk ahead along the antenna, or stop'],
  ['Z X', 'slower, faster'],
  ['M', 'mark the bearing'],
  ['G', 'guess pin: then a tap, or Enter for the middle of the map'],
  ['T', 'fix from the notebook, where the exercise has it'],
  ['N', 'tags and their frequencies'],
  ['F', 'declare the find'],
  ['+ −', 'map closer, farther'],
  ['I J K L', 'look about the map'],
  ['C', 'centre the map on me'],
  ['* / 0', 'louder, softer, sound off'],
  ['P', 'pause'],
];

/** The fonts have no arrows: they are drawn. */
const ARROWS: Readonly<Record<string, number>> = { '→': 0, '↓': 90, '←': 180, '↑': 270 };
const ARROW_NAMES: Readonly<Record<string, string>> = { '→': 'right arrow', '↓': 'down arrow', '←': 'left arrow', '↑': 'up arrow' };

function Arrow({ name, turnDeg }: { readonly name: string; readonly turnDeg: number }) {
  return (
    <svg viewBox="-8 -8 16 16" width="13" height="13" role="img" aria-label={ARROW_NAMES[name]}>
      <path d="M-6 0H6M1 -5L6 0L1 5" transform={`rotate(${turnDeg})`} fill="none" stroke="currentColor" stroke-width="1.8" />
    </svg>
  );
}

export function KeyList() {
  return (
    <dl class="keys">
      {KEYS.map(([keys, what]) => (
        <div key={keys} class="keys-line">
          <dt>
            {keys.split(' ').map((key) => (
              <kbd key={key}>{ARROWS[key] === undefined ? key : <Arrow name={key} turnDeg={ARROWS[key]} />}</kbd>
            ))}
          </dt>
          <dd>{what}</dd>
        </div>
      ))}
    </dl>
  );
}
