import type { MapPoint } from '../units/frames';
import { type BearingLine, directionOf } from './bearingLine';

/**
 * Bearing lines made ready for the search: station places measured from their middle in units of their spread, so that map
 * references of millions of metres lose no digits. Index space of the arrays: the line, in the order given.
 */
export type SightFrame = {
  readonly lines: readonly BearingLine[];
  readonly middle: MapPoint;
  /** Metres a unit: the largest distance of a station from the middle, 1 if all stand in one place. */
  readonly unitM: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Sine and cosine of the bearing: its east and north part. */
  readonly sine: Float64Array;
  readonly cosine: Float64Array;
};

/** The lines in their own frame. @throws RangeError for no lines at all */
export function frameOf(lines: readonly BearingLine[]): SightFrame {
  const first = lines[0];
  if (!first) throw new RangeError('no bearing lines');
  const fromFirst = lines.map(({ at }) => [at.eM - first.at.eM, at.nM - first.at.nM] as const);
  const meanE = fromFirst.reduce((sum, [east]) => sum + east, 0) / lines.length;
  const meanN = fromFirst.reduce((sum, [, north]) => sum + north, 0) / lines.length;
  const spreadM = Math.max(...fromFirst.map(([east, north]) => Math.hypot(east - meanE, north - meanN)));
  const unitM = spreadM > 0 ? spreadM : 1;
  const directions = lines.map(directionOf);
  return {
    lines,
    middle: { eM: first.at.eM + meanE, nM: first.at.nM + meanN },
    unitM,
    x: Float64Array.from(fromFirst, ([east]) => (east - meanE) / unitM),
    y: Float64Array.from(fromFirst, ([, north]) => (north - meanN) / unitM),
    sine: Float64Array.from(directions, ([east]) => east),
    cosine: Float64Array.from(directions, ([, north]) => north),
  };
}

/** A point in the frame's own units. */
export type FramePoint = { readonly x: number; readonly y: number };

export const toMap = (frame: SightFrame, point: FramePoint): MapPoint => ({
  eM: frame.middle.eM + point.x * frame.unitM,
  nM: frame.middle.nM + point.y * frame.unitM,
});

export const toFrame = (frame: SightFrame, point: MapPoint): FramePoint => ({
  x: (point.eM - frame.middle.eM) / frame.unitM,
  y: (point.nM - frame.middle.nM) / frame.unitM,
});
