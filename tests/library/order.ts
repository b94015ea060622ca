import { medianOf } from '../../src/core/desk/median';

/** One walk of the steady walker in an exercise of the library, as the state file keeps it. */
export type Walked = {
  readonly file: string;
  readonly digest: string;
  readonly seed: number;
  readonly found: boolean;
  readonly timeS: number;
  /** Of its bearings against the truth, without their side, degrees. */
  readonly errorsDeg: readonly number[];
  /** Bearings that were off by more than misleads. */
  readonly misleading: number;
};

export type Known = {
  readonly title: string;
  readonly lesson: string;
  readonly level: number;
  readonly limitS: number;
  readonly parS: number | undefined;
};

/** How hard an exercise was for the steady walker. */
export type Measured = Known & {
  readonly walks: number;
  readonly missedShare: number;
  /** Middle time of all walks; one that did not find counts as long as the exercise lasts. */
  readonly timeS: number;
  readonly errorDeg: number;
  readonly misleadingShare: number;
};

export function measured(known: Known, walks: readonly Walked[]): Measured {
  const errors = walks.flatMap(({ errorsDeg }) => errorsDeg);
  return {
    ...known,
    walks: walks.length,
    missedShare: walks.filter(({ found }) => !found).length / walks.length,
    timeS: medianOf(walks.map(({ found, timeS }) => (found ? timeS : known.limitS))) ?? known.limitS,
    errorDeg: medianOf(errors) ?? 0,
    misleadingShare: walks.reduce((sum, { misleading }) => sum + misleading, 0) / Math.max(1, errors.length),
  };
}

/** Place of each value from the lowest, 1 for the first; equal ones share the mean of theirs. */
export const ranksOf = (values: readonly number[]): readonly number[] =>
  values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const equal = values.filter((other) => other === value).length;
    return below + (equal + 1) / 2;
  });

/** Spearman's rank correlation, −1 to 1: the correlation of the ranks, which minds ties. `null` where one of the two is the same throughout. */
export function rankCorrelation(one: readonly number[], other: readonly number[]): number | null {
  const [a, b] = [ranksOf(one), ranksOf(other)];
  const mean = (one.length + 1) / 2;
  const products = (x: readonly number[], y: readonly number[]) => x.reduce((sum, rank, i) => sum + (rank - mean) * (y[i]! - mean), 0);
  const spread = Math.sqrt(products(a, a) * products(b, b));
  return spread === 0 ? null : products(a, b) / spread;
}

/** What an exercise is measured by, each the more the harder. */
export const MEASURES = {
  'not found': ({ missedShare }) => missedShare,
  'time to the find': ({ timeS }) => timeS,
  'bearing error': ({ errorDeg }) => errorDeg,
  'bearings that mislead': ({ misleadingShare }) => misleadingShare,
} as const satisfies Readonly<Record<string, (one: Measured) => number>>;

/** Hardness of each exercise among the others: the mean of its ranks by what it is measured by. */
export function hardness(all: readonly Measured[]): readonly number[] {
  const ranks = Object.values(MEASURES).map((measure) => ranksOf(all.map(measure)));
  return all.map((_, i) => ranks.reduce((sum, by) => sum + by[i]!, 0) / ranks.length);
}

/** Two exercises of one ladder, the first of the lower level. */
export type Pair = readonly [lower: number, higher: number];

export const pairsOfLadders = (all: readonly Measured[]): readonly Pair[] =>
  all.flatMap((lower, i) =>
    all.flatMap((higher, j): Pair[] => (lower.lesson === higher.lesson && lower.level < higher.level ? [[i, j]] : [])),
  );

/** How the pairs of the ladders stand by a measure: in the order of their levels, level with one another, or the other way about. */
export const agreement = (pairs: readonly Pair[], values: readonly number[]) => ({
  agree: pairs.filter(([lower, higher]) => values[lower]! < values[higher]!).length,
  same: pairs.filter(([lower, higher]) => values[lower]! === values[higher]!).length,
  against: pairs.filter(([lower, higher]) => values[lower]! > values[higher]!),
});
