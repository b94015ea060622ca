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
  ['F', 'declare the find'],
  ['+ −', 'map closer, farther'],
  ['I J K L', 'look about the map'],
  ['C', 'centre the map on me'],
  ['* / 0', 'louder, softer, sound off'],
  ['P', 'pause'],
];

export function KeyList() {
  return (
    <dl class="keys">
      {KEYS.map(([keys, what]) => (
        <div key={keys} class="keys-line">
          <dt>
            {keys.split(' ').map((key) => (
              <kbd key={key}>{key}</kbd>
            ))}
          </dt>
          <dd>{what}</dd>
        </div>
      ))}
    </dl>
  );
}
