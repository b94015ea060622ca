import type { Ellipse } from './ellipse';

export type FixMethod = 'ml' | 'huber' | 'andrews';

export type FixInput = {
  /** East and north of each station, metres, any origin. */
  readonly stations: readonly (readonly [number, number])[];
  /** The bearing taken at each station, degrees clockwise from grid north. */
  readonly bearingsDeg: readonly number[];
  /** Plain maximum likelihood unless said otherwise. */
  readonly method?: FixMethod;
  /** The learner's own bearing spread from blind tests, degrees; 5 until measured. */
  readonly learnerSdDeg?: number;
};

export type FoundFix = {
  readonly ok: true;
  readonly x: number;
  readonly y: number;
  /** Concentration of the bearing errors; null where the bearings meet in one point, so that their spread is unknown. */
  readonly kappa: number | null;
  /** F-based 95 % area; null for two bearings and where the spread is unknown. */
  readonly ellipse95: Ellipse | null;
  /** Lenth's area with chi-square: covers only 42, 59, 68, 81 % at 3, 4, 5, 8 bearings (computed independently for this project). */
  readonly ellipse95Chi2: Ellipse | null;
  /** 95 % area for the learner's own bearing spread, defined from two bearings on. */
  readonly learnerEllipse: Ellipse | null;
  /** Bearing taken minus bearing to the fix, one for each station, clockwise positive. */
  readonly residualsDeg: readonly number[];
  /** How much say each bearing had, 0..1; all 1 for `ml`. */
  readonly weights: readonly number[];
  readonly crossingAngleDeg: number;
  readonly warnings: readonly string[];
};

export type RefusedFix = {
  readonly ok: false;
  /** Why there is no fix, in plain English, with what to do about it. */
  readonly reason: string;
  readonly x: null;
  readonly y: null;
  readonly kappa: null;
  readonly ellipse95: null;
  readonly ellipse95Chi2: null;
  readonly learnerEllipse: null;
  readonly residualsDeg: readonly [];
  readonly weights: readonly [];
  readonly crossingAngleDeg: number | null;
  readonly warnings: readonly string[];
};

export type Fix = FoundFix | RefusedFix;

/** The answer without a place. `reason` is given without its full stop. */
export function refusal(reason: string, crossingAngleDeg: number | null = null): RefusedFix {
  const none = { x: null, y: null, kappa: null, ellipse95: null, ellipse95Chi2: null, learnerEllipse: null } as const;
  return { ok: false, reason: `${reason}.`, ...none, residualsDeg: [], weights: [], crossingAngleDeg, warnings: [] };
}
