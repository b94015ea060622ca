/** Mean and its 95 % confidence interval. */
export type MeanInterval = { readonly count: number; readonly mean: number; readonly from: number; readonly to: number };

/** Two-sided 95 % points of Student's t for 1 to 30 degrees of freedom (tables of the distribution, values from memory). */
const T95 = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131, 2.12, 2.11, 2.101, 2.093, 2.086,
  2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
] as const;

/** Beyond the table the point goes as 1.96 + 2.4 / freedom, within 0.005 of the distribution. */
export const t95 = (freedom: number): number => T95[freedom - 1] ?? 1.96 + 2.4 / freedom;

export const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Sample standard deviation; 0 for one value. */
export function deviationOf(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** Mean with its t interval; a single value has no width to show and none is shown. @returns `null` for no values */
export function meanInterval(values: readonly number[]): MeanInterval | null {
  if (values.length === 0) return null;
  const mean = meanOf(values);
  const half = values.length < 2 ? 0 : (t95(values.length - 1) * deviationOf(values)) / Math.sqrt(values.length);
  return { count: values.length, mean, from: mean - half, to: mean + half };
}

/** A share with its 95 % Wilson interval (1927). @returns shares 0 to 1 */
export function shareInterval(right: number, count: number): MeanInterval {
  const z = 1.96;
  const share = count === 0 ? 0 : right / count;
  const spread = z * Math.sqrt((share * (1 - share)) / count + z ** 2 / (4 * count ** 2));
  const middle = share + z ** 2 / (2 * count);
  const scale = 1 + z ** 2 / count;
  return { count, mean: share, from: Math.max(0, (middle - spread) / scale), to: Math.min(1, (middle + spread) / scale) };
}

/** The non-increasing sequence nearest to the values in least squares (pool adjacent violators). */
export function nonIncreasing(values: readonly number[]): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  for (const value of values) {
    pools.push({ sum: value, count: 1 });
    while (pools.length > 1) {
      const [before, last] = [pools.at(-2)!, pools.at(-1)!];
      if (before.sum / before.count >= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  }
  return pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}

/** By how much the values rise somewhere although they should not: largest distance from their non-increasing fit. */
export function risesBy(values: readonly number[]): number {
  const fitted = nonIncreasing(values);
  return Math.max(0, ...values.map((value, i) => Math.abs(value - fitted[i]!)));
}

/** Mean squares of a table of subjects (rows) by raters (columns), two ways, one value a cell. */
function meanSquares(table: readonly (readonly number[])[]) {
  const [n, k] = [table.length, table[0]!.length];
  const grand = meanOf(table.flat());
  const rows = table.map(meanOf);
  const columns = table[0]!.map((_, j) => meanOf(table.map((row) => row[j]!)));
  const between = (k * rows.reduce((sum, m) => sum + (m - grand) ** 2, 0)) / (n - 1);
  const raters = (n * columns.reduce((sum, m) => sum + (m - grand) ** 2, 0)) / (k - 1);
  let rest = 0;
  table.forEach((row, i) => {
    row.forEach((value, j) => {
      rest += (value - rows[i]! - columns[j]! + grand) ** 2;
    });
  });
  return { n, k, between, raters, rest: rest / ((n - 1) * (k - 1)) };
}

/**
 * ICC(2,1): two-way random effects, absolute agreement, a single measure. Rows are subjects, columns raters.
 * @source Shrout and Fleiss 1979 @returns `null` for fewer than two rows or columns, or where nothing varies
 */
export function icc21(table: readonly (readonly number[])[]): number | null {
  if (table.length < 2 || (table[0]?.length ?? 0) < 2) return null;
  const { n, k, between, raters, rest } = meanSquares(table);
  const all = between + (k - 1) * rest + (k * (raters - rest)) / n;
  return all <= 0 ? null : (between - rest) / all;
}

/** Standard error of a single measure: raters and rest together, in the units of the values. */
export function standardError(table: readonly (readonly number[])[]): number | null {
  if (table.length < 2 || (table[0]?.length ?? 0) < 2) return null;
  const { n, raters, rest } = meanSquares(table);
  return Math.sqrt(Math.max(0, (raters - rest) / n) + rest);
}

/** Smallest difference between two measures that is not chance, 95 %. */
export const minimalDetectableChange = (errorOfOne: number): number => 1.96 * Math.SQRT2 * errorOfOne;

/** How many runs averaged reach a reliability (Spearman and Brown 1910). @returns at least 1; `null` where one run tells nothing */
export function runsFor(reliability: number, single: number | null): number | null {
  if (single === null || single <= 0) return null;
  return Math.max(1, Math.ceil((reliability * (1 - single)) / (single * (1 - reliability)) - 1e-9));
}
