import { toDeg, turnDeg } from '../../core/units/angles';
import type { SizePx } from '../map/screenFrame';

/** How directions and slopes of the view lie on the strip. */
export type StripView = {
  readonly headingDeg: number;
  readonly pxPerDeg: number;
  readonly horizonY: number;
  /** Height is drawn so many times larger than width. */
  readonly exaggeration: number;
  readonly size: SizePx;
  /** Room at the foot that the degrees need. */
  readonly footPx: number;
};

export const xOf = (view: StripView, bearingDeg: number): number =>
  view.size.width / 2 + turnDeg(view.headingDeg, bearingDeg) * view.pxPerDeg;

/** A slope is rise over run; small angles, so its arc is the slope itself. */
export const yOf = (view: StripView, slope: number): number => view.horizonY - toDeg(slope) * view.pxPerDeg * view.exaggeration;

const FACTORS = [5, 4, 3, 2, 1] as const;

/** The largest exaggeration at which the highest of what is seen still keeps clear of the strip's top. */
export function exaggerationFor(highestSlope: number, pxPerDeg: number, roomPx: number): number {
  return FACTORS.find((factor) => toDeg(Math.max(0.01, highestSlope)) * pxPerDeg * factor <= roomPx) ?? 1;
}

/** Degrees that the strip shows: fewer on a narrow one, so that woods and poles stay legible. */
export const pxPerDegFor = (widthPx: number): number => Math.max(4.6, widthPx / (widthPx < 600 ? 80 : 105));
