import type { MapPoint } from '../units/frames';
import type { BearingLine } from './bearingLine';
import { robustLogLikelihood, supportedPlace } from './supportedPlace';

/** Robust log-likelihood over the ground round the stations: row-major from the south-west corner, value at the cell's centre. */
export type GuessGrid = {
  readonly southWest: MapPoint;
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
  /** 0 where all lines meet, falling by at most 4.5 for each line that does not pass. */
  readonly logLikelihood: Float64Array;
  /** The best place, which may lie off the grid; null where the readings agree best infinitely far away. */
  readonly best: MapPoint | null;
};

const CELLS = 64;
/** Ground beyond the stations, metres and as a multiple of their spread. */
const LEAST_MARGIN_M = 500;
const MARGIN_SPREADS = 3;

/** What the bearings say about the ground around, for bearings of spread `sigmaDeg`. @throws RangeError for no lines */
export function guessFromBearings(lines: readonly BearingLine[], sigmaDeg: number): GuessGrid {
  const best = supportedPlace(lines, sigmaDeg);
  const east = lines.map(({ at }) => at.eM);
  const north = lines.map(({ at }) => at.nM);
  const [west, south] = [Math.min(...east), Math.min(...north)];
  const spreadM = Math.max(Math.max(...east) - west, Math.max(...north) - south);
  const marginM = Math.max(LEAST_MARGIN_M, MARGIN_SPREADS * spreadM);
  const southWest = { eM: west - marginM, nM: south - marginM };
  const cellM = (spreadM + 2 * marginM) / CELLS;
  const valueAt = robustLogLikelihood(lines, sigmaDeg);
  const logLikelihood = Float64Array.from({ length: CELLS * CELLS }, (_, cell) => {
    const centre = { eM: southWest.eM + ((cell % CELLS) + 0.5) * cellM, nM: southWest.nM + (Math.floor(cell / CELLS) + 0.5) * cellM };
    return valueAt(centre);
  });
  return { southWest, cellM, columns: CELLS, rows: CELLS, logLikelihood, best: best.kind === 'place' ? best.point : null };
}
