import type { Listener } from '../ear/loudness';
import type { Air } from '../listening/air';
import { FIRST_SETTINGS, GAIN, onDial, type Settings } from '../listening/settings';
import { turnDeg } from '../units/angles';
import { drawn } from './drawn';
import { plainView } from './plainView';

/** Places of a blind test, as in field studies of bearing error. */
export const BLIND_PLACES = 30;
/** A bearing further off than this is the back signal: counted apart, as it says nothing about how well edges are halved. */
const WRONG_SIDE_DEG = 90;
const LEAST_BEARINGS = 10;

/** One place: what is heard there, how it starts, and where the tag is. */
export type BlindPlace = { readonly air: Air; readonly start: Settings; readonly trueDeg: number; readonly distanceM: number };

export function blindPlace(seed: string, index: number, listener: Listener): BlindPlace {
  const by = drawn(`${seed}/blind/${index}`);
  const view = plainView(by, { fromM: 150, toM: 1_500 });
  const gainDb = onDial(GAIN, view.leastDb(listener) + by.between(12, 36));
  return {
    air: view.air,
    trueDeg: view.bearingDeg,
    distanceM: view.distanceM,
    start: { ...FIRST_SETTINGS, headingDeg: by.bearingDeg(), gainDb },
  };
}

/** Published spread and bias of bearings taken by hand. */
export const PUBLISHED: readonly { readonly source: string; readonly sdDeg: number; readonly biasDeg: number | null }[] = [
  { source: 'Springer 1979', sdDeg: 3.9, biasDeg: 0.2 },
  { source: 'Podruzny 1996', sdDeg: 1.63, biasDeg: null },
];

/** A value with the bounds that hold it with 95 % confidence. */
export type Bounded = { readonly value: number; readonly low: number; readonly high: number };

export type BlindResult = {
  readonly places: number;
  /** Bearings on the wrong side, left out of spread and bias. */
  readonly wrongSide: number;
  readonly sdDeg: Bounded;
  readonly biasDeg: Bounded;
};

/** Spread and bias of bearings against the truth, with 95 % bounds; `null` with fewer than ten bearings on the right side. */
export function blindResult(bearings: readonly { readonly trueDeg: number; readonly markedDeg: number }[]): BlindResult | null {
  const errors = bearings.map(({ trueDeg, markedDeg }) => turnDeg(trueDeg, markedDeg));
  const sided = errors.filter((error) => Math.abs(error) <= WRONG_SIDE_DEG);
  const n = sided.length;
  if (n < LEAST_BEARINGS) return null;
  const bias = sided.reduce((sum, error) => sum + error, 0) / n;
  const sd = Math.sqrt(sided.reduce((sum, error) => sum + (error - bias) ** 2, 0) / (n - 1));
  const off = (studentT(n - 1) * sd) / Math.sqrt(n);
  return {
    places: bearings.length,
    wrongSide: errors.length - n,
    sdDeg: { value: sd, low: sd * Math.sqrt((n - 1) / chiSquare(n - 1, 1)), high: sd * Math.sqrt((n - 1) / chiSquare(n - 1, -1)) },
    biasDeg: { value: bias, low: bias - off, high: bias + off },
  };
}

/** Standard normal deviate of 2.5 % in each tail. */
const Z = 1.959964;

/** Chi-square with `k` degrees of freedom that 2.5 % lie above (+1) or below (-1). Wilson and Hilferty 1931, within 1 % from k = 9. */
export const chiSquare = (k: number, side: 1 | -1): number => k * (1 - 2 / (9 * k) + side * Z * Math.sqrt(2 / (9 * k))) ** 3;

/** Student's t with `k` degrees of freedom, 2.5 % above: Abramowitz & Stegun 26.7.5, first three terms. */
export function studentT(k: number): number {
  const g1 = (Z ** 3 + Z) / 4;
  const g2 = (5 * Z ** 5 + 16 * Z ** 3 + 3 * Z) / 96;
  const g3 = (3 * Z ** 7 + 19 * Z ** 5 + 17 * Z ** 3 - 15 * Z) / 384;
  return Z + g1 / k + g2 / k ** 2 + g3 / k ** 3;
}
