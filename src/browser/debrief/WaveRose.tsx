import type { BearingRow } from '../../core/debrief/bearings';
import { bearingVerdict } from '../../core/debrief/bearingVerdict';
import { ARROW_KINDS, type WaveArrow } from '../../core/debrief/lossBudget';
import type { LossBudget } from '../../core/radio/wave';
import { turnDeg } from '../../core/units/angles';
import { WAVE_DASHES, WAVE_NAMES, WAVE_WIDTHS, waveShare } from './map/paintBearings';

const SIDE = 340;
const MIDDLE = SIDE / 2;
const LONGEST = 112;
const GAP = 14;

const at = (deg: number, px: number) => ({
  x: MIDDLE + px * Math.sin((deg * Math.PI) / 180),
  y: MIDDLE - px * Math.cos((deg * Math.PI) / 180),
});

const LOSS_WORDS: readonly (readonly [keyof LossBudget, string])[] = [
  ['freeSpace', 'distance'],
  ['ground', 'ground'],
  ['terrain', 'hills between'],
  ['wood', 'wood'],
  ['building', 'buildings'],
  ['reflection', 'reflection'],
  ['polarization', 'wrong axis'],
];

/** The waves that made a bearing: each comes in from its side, the longer the stronger. */
export function WaveRose({ row, waves }: { readonly row: BearingRow; readonly waves: readonly WaveArrow[] | undefined }) {
  const strongest = waves?.[0];
  // Names of two neighbouring lines stand one over the other.
  const apart = Math.abs(row.errorDeg) > 14;
  const lower = at(row.trueDeg, LONGEST).y >= at(row.takenDeg, LONGEST).y;
  return (
    <figure class="rose">
      <figcaption>
        <h3>Waves behind bearing {row.number}</h3>
        {!waves && (
          <p class="quiet" role="status">
            Working out the waves …
          </p>
        )}
        {waves && <p class="quiet">{sentenceOf(row, waves)}</p>}
      </figcaption>
      <svg viewBox={`0 0 ${SIDE} ${SIDE}`} role="img" aria-label={`Waves at bearing ${row.number}`}>
        <circle cx={MIDDLE} cy={MIDDLE} r={GAP + LONGEST} class="rose-ring" />
        {[0, 90, 180, 270]
          .filter((deg) => [row.trueDeg, row.takenDeg].every((named) => Math.abs(turnDeg(named, deg)) > 22))
          .map((deg) => {
            const { x, y } = at(deg, GAP + LONGEST + 13);
            return (
              <text key={deg} x={x} y={y} class="rose-point" text-anchor="middle" dominant-baseline="central">
                {'NESW'[deg / 90]}
              </text>
            );
          })}
        <RoseLine deg={row.trueDeg} kind="rose-true" drop={apart ? 0 : lower ? 8 : -8} />
        <RoseLine deg={row.takenDeg} kind="rose-taken" drop={apart ? 0 : lower ? -8 : 8} />
        {waves?.map((wave) => (
          <RoseArrow key={`${wave.kind}${wave.azimuthDeg}`} wave={wave} strongestDbm={strongest!.powerDbm} />
        ))}
        <circle cx={MIDDLE} cy={MIDDLE} r="6" class="rose-here" />
      </svg>
      {strongest && <Losses loss={strongest.lossDb} kind={WAVE_NAMES[strongest.kind]} />}
      {waves && <WaveTable waves={waves} />}
    </figure>
  );
}

function RoseLine({ deg, kind, drop }: { readonly deg: number; readonly kind: 'rose-true' | 'rose-taken'; readonly drop: number }) {
  const [from, to] = [at(deg, GAP), at(deg, GAP + LONGEST)];
  const name = at(deg, GAP + LONGEST + 10);
  const east = Math.sin((deg * Math.PI) / 180);
  const anchor = east < -0.35 ? 'end' : east > 0.35 ? 'start' : 'middle';
  return (
    <>
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} class={kind} />
      <text x={name.x} y={name.y + drop} class={`${kind}-name`} text-anchor={anchor} dominant-baseline="central">
        {kind === 'rose-true' ? 'the tag' : 'taken'}
      </text>
    </>
  );
}

function RoseArrow({ wave, strongestDbm }: { readonly wave: WaveArrow; readonly strongestDbm: number }) {
  const tail = at(wave.azimuthDeg, GAP + LONGEST * waveShare(wave.powerDbm, strongestDbm));
  const tip = at(wave.azimuthDeg, GAP);
  const wing = (turn: number) => {
    const { x, y } = at(wave.azimuthDeg, GAP + 9);
    const across = at(wave.azimuthDeg + 90, turn * 4.5);
    return `${x + across.x - MIDDLE},${y + across.y - MIDDLE}`;
  };
  return (
    <g class="rose-wave">
      <line
        x1={tail.x}
        y1={tail.y}
        x2={tip.x}
        y2={tip.y}
        stroke-dasharray={WAVE_DASHES[wave.kind].join(' ') || 'none'}
        stroke-width={WAVE_WIDTHS[wave.kind]}
      />
      <polyline points={`${wing(-1)} ${tip.x},${tip.y} ${wing(1)}`} />
    </g>
  );
}

/** What the strongest wave lost on its way, as a bar of its causes. */
function Losses({ loss, kind }: { readonly loss: LossBudget; readonly kind: string }) {
  const parts = LOSS_WORDS.flatMap(([cause, words]) => {
    const db = loss[cause];
    return db !== undefined && db >= 0.5 ? [{ words, db }] : [];
  });
  const sum = parts.reduce((all, { db }) => all + db, 0);
  return (
    <div class="losses">
      <h4 class="label">Lost on the way, {kind} wave</h4>
      <div class="losses-bar" aria-hidden="true">
        {parts.map(({ words, db }) => (
          <span key={words} style={{ width: `${(100 * db) / sum}%` }} />
        ))}
      </div>
      <p class="losses-words">
        {parts.map(({ words, db }) => (
          <span key={words}>
            {words} <span class="number">{Math.round(db)}</span>
          </span>
        ))}
        <span class="unit">dB</span>
      </p>
    </div>
  );
}

function sentenceOf(row: BearingRow, waves: readonly WaveArrow[]): string {
  const off = Math.round(Math.abs(row.errorDeg));
  const verdict = bearingVerdict(row, waves);
  switch (verdict.kind) {
    case 'tag':
      return `${off}° off: it points at the tag.`;
    case 'roughly':
      return `${off}° off: toward the tag, but not at it.`;
    case 'back-signal':
      return 'It points away from the strongest wave: a back signal, at too much gain to tell.';
    case 'echo':
      return `${off}° off: it points at the ${WAVE_NAMES[verdict.wave]} wave, not at the tag.`;
    case 'wide-arc':
      return `${off}° off: at this gain a wide arc sounds the same.`;
    case 'astray':
      return `${off}° off, toward none of the strong waves.`;
  }
}

function WaveTable({ waves }: { readonly waves: readonly WaveArrow[] }) {
  return (
    <details class="numbers-table">
      <summary>Table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Wave</th>
            <th scope="col">From</th>
            <th scope="col">Power, dBm</th>
          </tr>
        </thead>
        <tbody>
          {[...waves]
            .sort((a, b) => ARROW_KINDS.indexOf(a.kind) - ARROW_KINDS.indexOf(b.kind))
            .map((wave) => (
              <tr key={`${wave.kind}${wave.azimuthDeg}`} class="number">
                <th scope="row">{WAVE_NAMES[wave.kind]}</th>
                <td>{String(Math.round(wave.azimuthDeg) % 360).padStart(3, '0')}°</td>
                <td>{Math.round(wave.powerDbm)}</td>
              </tr>
            ))}
        </tbody>
      </table>
    </details>
  );
}
