/**
 * Whether a row of numbers shows a change that chance does not explain. The standard error of measurement comes from the differences of
 * neighbours, which slow progress hardly moves: SEM = SD of them / √2. The least change that can be told between two numbers is
 * 1.96 √2 SEM (Weir 2005, J. Strength Cond. Res. 19:231-240), less by √k where the means of k are compared.
 */
export type Trend = {
  /** Standard error of one number. */
  readonly sem: number;
  /** Least change between one number and another that is told with 95 %. */
  readonly detectable: number;
  /** Means of the first and the last few. */
  readonly first: number;
  readonly last: number;
  /** The same for those means. */
  readonly detectableOfMeans: number;
  readonly verdict: 'better' | 'worse' | 'within chance';
};

/** Numbers whose mean stands for the beginning and for the present. */
const MEANS_OF = 3;
/** Fewer than this and nothing is said. */
export const LEAST_NUMBERS = 6;

/** @param lessIsBetter errors and thresholds; grades are the other way */
export function trendOf(numbers: readonly number[], lessIsBetter: boolean): Trend | null {
  if (numbers.length < LEAST_NUMBERS) return null;
  const steps = numbers.slice(1).map((number, i) => number - numbers[i]!);
  // About zero, not about their mean: a steady climb would otherwise hide in it.
  const sem = Math.sqrt(mean(steps.map((step) => step ** 2)) / 2);
  const [first, last] = [mean(numbers.slice(0, MEANS_OF)), mean(numbers.slice(-MEANS_OF))];
  const detectable = 1.96 * Math.SQRT2 * sem;
  const detectableOfMeans = detectable / Math.sqrt(MEANS_OF);
  const gain = lessIsBetter ? first - last : last - first;
  const verdict = gain > detectableOfMeans ? 'better' : -gain > detectableOfMeans ? 'worse' : 'within chance';
  return { sem, detectable, first, last, detectableOfMeans, verdict };
}

const mean = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
