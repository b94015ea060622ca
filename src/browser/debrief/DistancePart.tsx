import type { GainDistance, GainFit, GainRow } from '../../core/debrief/gainDistance';
import { onLineDb, PLANE_EARTH_PER_DECADE_DB } from '../../core/debrief/gainDistance';
import { DistanceChart } from './charts/DistanceChart';
import { printOnly } from './printOnly';
import { TableFrame } from './TableFrame';

/** Least gain over distance as this run met it: how a gain setting tells how far it is. */
export function DistancePart({ gain }: { readonly gain: GainDistance }) {
  const { rows, fit } = gain;
  if (rows.length < 2) return <p class="quiet">The run met too few distances to say how gain and distance go together.</p>;
  return (
    <>
      <p>{fit ? fitWords(fit) : 'The run met too few distances for a line.'}</p>
      <DistanceChart gain={gain} />
      <TableFrame name="Least gain by distance">
        <DistanceTable rows={rows} fit={fit} />
      </TableFrame>
      <div class="part-deeds">
        <button type="button" onClick={() => printOnly('card')}>
          Print as a card
        </button>
      </div>
    </>
  );
}

export function fitWords({ perDoublingDb, inSight }: GainFit): string {
  const per = Math.round(Math.abs(perDoublingDb));
  const where = inSight ? 'with the tag in view' : 'over all of the ground, hidden or not';
  if (perDoublingDb < 2) return `This run's line, ${where}, hardly rises with distance: here gain did not tell how far it was.`;
  const against =
    Math.abs(perDoublingDb - 12) < 2
      ? 'just as the rule of thumb has it'
      : perDoublingDb > 12
        ? 'more than the 12 dB of the rule of thumb'
        : 'less than the 12 dB of the rule of thumb';
  return `Twice as far asked for ${per} dB more, ${where}: ${against}.`;
}

const metres = (m: number): string => String(m < 1_000 ? Math.round(m) : Math.round(m / 10) * 10);
/** Minus signs as print has them; what lies under the receiver's range is told as that. */
const decibels = (db: number): string => (db < -30 ? 'under −30' : String(Math.round(db)).replace('-', '−'));

export function DistanceTable({ rows, fit }: { readonly rows: readonly GainRow[]; readonly fit: GainFit | null }) {
  const middleM = ({ fromM, toM }: GainRow) => Math.sqrt(Math.max(fromM, toM / 2) * toM);
  return (
    <table class="distance-table">
      <thead>
        <tr>
          <th scope="col">Distance, m</th>
          <th scope="col">Just heard at, dB</th>
          <th scope="col">Half between, dB</th>
          {fit && <th scope="col">Fitted line, dB</th>}
          {fit && <th scope="col">12 dB a doubling, dB</th>}
          <th scope="col">In view</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.toM} class="number">
            <th scope="row">
              {metres(row.fromM)}–{metres(row.toM)}
            </th>
            <td>{decibels(row.middleDb)}</td>
            <td>
              {decibels(row.lowDb)} … {decibels(row.highDb)}
            </td>
            {fit && <td>{decibels(onLineDb(fit, fit.perDecadeDb, middleM(row)))}</td>}
            {fit && <td>{decibels(onLineDb(fit, PLANE_EARTH_PER_DECADE_DB, middleM(row)))}</td>}
            <td>{Math.round(100 * row.inSightShare)} %</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
