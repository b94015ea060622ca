import type { RunColumns } from './runColumns';

const ROWS_AT_MOST = 60;
const clock = (s: number): string => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`;

/** The numbers behind the chart: every so many pulses a row. */
export function GainTable({ columns }: { readonly columns: RunColumns }) {
  const every = Math.max(1, Math.ceil(columns.timeS.length / ROWS_AT_MOST));
  const rows = columns.timeS.map((_, i) => i).filter((i) => i % every === 0);
  return (
    <details class="gain-table">
      <summary>Table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Time</th>
            <th scope="col">Gain in use, dB</th>
            <th scope="col">Least gain, dB</th>
            <th scope="col">Excess, dB</th>
            <th scope="col">Distance, m</th>
            <th scope="col">Heard</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((i) => {
            const least = columns.leastGainDb[i] ?? null;
            return (
              <tr key={i} class="number">
                <td>{clock(columns.timeS[i]!)}</td>
                <td>{Math.round(columns.netGainDb[i]!)}</td>
                <td>{least === null ? '–' : Math.round(least)}</td>
                <td>{least === null ? '–' : Math.round(columns.netGainDb[i]! - least)}</td>
                <td>{Math.round(columns.distanceM[i]!)}</td>
                <td>{columns.audible[i] ? 'yes' : 'no'}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
