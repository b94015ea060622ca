import type { Timeline } from '../../core/debrief/timeline';
import { clock } from './charts/chartFrame';
import { TableFrame } from './TableFrame';

const ROWS_AT_MOST = 90;
const degrees = (deg: number): string => `${String(Math.round(deg) % 360).padStart(3, '0')}°`;

/** The numbers behind the charts over time: every so many pulses a row. */
export function TimeTable({ timeline }: { readonly timeline: Timeline }) {
  const every = Math.max(1, Math.ceil(timeline.timeS.length / ROWS_AT_MOST));
  const rows = timeline.timeS.map((_, i) => i).filter((i) => i % every === 0);
  return (
    <details class="numbers-table">
      <summary>Table</summary>
      <TableFrame name="Gain, loudness and heading over time">
        <table>
          <thead>
            <tr>
              <th scope="col">Time</th>
              <th scope="col">Gain in use, dB</th>
              <th scope="col">Least gain, dB</th>
              <th scope="col">Excess, dB</th>
              <th scope="col">Loudness, dB</th>
              <th scope="col">Heard</th>
              <th scope="col">Heading</th>
              <th scope="col">Loudest side</th>
              <th scope="col">The tag</th>
              <th scope="col">Distance, m</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((i) => (
              <tr key={i} class="number">
                <th scope="row">{clock(timeline.timeS[i]!)}</th>
                <td>{Math.round(timeline.netGainDb[i]!)}</td>
                <td>{rounded(timeline.leastGainDb[i])}</td>
                <td>{rounded(timeline.excessDb[i])}</td>
                <td>{Math.round(timeline.loudnessDb[i]!)}</td>
                <td>{timeline.flatOut[i] ? 'flat out' : timeline.audible[i] ? 'yes' : 'no'}</td>
                <td>{degrees(timeline.headingDeg[i]!)}</td>
                <td>{degrees(timeline.loudestDeg[i]!)}</td>
                <td>{degrees(timeline.trueBearingDeg[i]!)}</td>
                <td>{Math.round(timeline.distanceM[i]!)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}

const rounded = (value: number | null | undefined): string => (value === null || value === undefined ? '–' : String(Math.round(value)));
