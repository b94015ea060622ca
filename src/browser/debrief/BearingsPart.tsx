import type { BearingRow } from '../../core/debrief/bearings';
import type { WaveArrow } from '../../core/debrief/lossBudget';
import { wavesOf } from '../finishedRun';
import { clock } from './charts/chartFrame';
import { WAVE_NAMES } from './map/paintBearings';
import { chooseBearing, chosenBearing } from './replay';
import { TableFrame } from './TableFrame';
import { WaveRose } from './WaveRose';

const degrees = (deg: number): string => `${String(Math.round(deg) % 360).padStart(3, '0')}°`;
const signed = (deg: number): string => `${deg < 0 ? '−' : '+'}${Math.round(Math.abs(deg))}°`;

/** Each bearing with its true error; the one that is looked at with the waves that made it. */
export function BearingsPart({ rows }: { readonly rows: readonly BearingRow[] }) {
  if (rows.length === 0)
    return <p class="quiet">No bearing was marked. Mark what you hear: two that cross are worth an hour of walking.</p>;
  const shown = rows.find(({ number }) => number === chosenBearing.value) ?? worstOf(rows);
  const waves = wavesOf.value.get(shown.number);
  return (
    <div class="bearings">
      <TableFrame name="Bearings">
        <table class="bearings-table">
          <thead>
            <tr>
              <th scope="col">Bearing</th>
              <th scope="col">Time</th>
              <th scope="col">Taken</th>
              <th scope="col">True</th>
              <th scope="col">Error</th>
              <th scope="col">
                <span class="unseen">Error drawn</span>
              </th>
              <th scope="col">Excess, dB</th>
              <th scope="col">Tag</th>
              <th scope="col">Loudest wave</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <BearingLine key={row.number} row={row} waves={wavesOf.value.get(row.number)} shown={row === shown} />
            ))}
          </tbody>
        </table>
      </TableFrame>
      <WaveRose row={shown} waves={waves} />
    </div>
  );
}

const worstOf = (rows: readonly BearingRow[]): BearingRow => rows.reduce((a, b) => (Math.abs(b.errorDeg) > Math.abs(a.errorDeg) ? b : a));

function BearingLine({
  row,
  waves,
  shown,
}: {
  readonly row: BearingRow;
  readonly waves: readonly WaveArrow[] | undefined;
  readonly shown: boolean;
}) {
  const strongest = waves?.[0];
  return (
    <tr class={row.struckOut ? 'number bearing-struck' : 'number'} data-shown={shown}>
      <th scope="row">
        <button
          type="button"
          class="bearing-choose"
          aria-pressed={chosenBearing.value === row.number}
          aria-label={`Bearing ${row.number}${row.struckOut ? ', struck out' : ''}: show on the map`}
          onClick={() => chooseBearing(row.number, row.atS)}
        >
          {row.number}
        </button>
      </th>
      <td>{clock(row.atS)}</td>
      <td>{degrees(row.takenDeg)}</td>
      <td>{degrees(row.trueDeg)}</td>
      <td>{signed(row.errorDeg)}</td>
      <td>
        <ErrorBar deg={row.errorDeg} />
      </td>
      <td>{row.excessDb === null ? '–' : Math.round(row.excessDb)}</td>
      <td class="bearing-words">
        {row.inSight ? 'in view' : 'hidden'},{' '}
        {row.distanceM < 950 ? `${Math.round(row.distanceM)} m` : `${(row.distanceM / 1_000).toFixed(1)} km`}
      </td>
      <td class="bearing-words">{strongest ? `${WAVE_NAMES[strongest.kind]} ${degrees(strongest.azimuthDeg)}` : '…'}</td>
    </tr>
  );
}

/** The error to either side of the truth; more than 45 degrees fill it. */
function ErrorBar({ deg }: { readonly deg: number }) {
  const share = Math.min(45, Math.abs(deg)) / 45;
  return (
    <span class="error-bar" aria-hidden="true">
      <span style={{ width: `${50 * share}%`, [deg < 0 ? 'right' : 'left']: '50%' }} />
    </span>
  );
}
