/**
 * The values that a drill's difficulty can take, in the drill's own unit: smaller is harder. A staircase walks on it in even steps, of the
 * unit itself or, where `ratio` says so, of its logarithm, so that 2 to 3 degrees is as far as 20 to 30.
 */
export type Ladder = {
  readonly hardest: number;
  readonly easiest: number;
  /** Where somebody new begins. */
  readonly first: number;
  /** What one step toward easier adds, or multiplies by. */
  readonly step: number;
  readonly ratio: boolean;
};

/** Place of a value on the ladder, counted in steps toward easier. */
export const rungOf = ({ step, ratio }: Ladder, value: number): number => (ratio ? Math.log(value) / Math.log(step) : value / step);

/** The value at a place of the ladder, kept between its ends. */
export function valueAt({ step, ratio, hardest, easiest }: Ladder, rung: number): number {
  const value = ratio ? step ** rung : rung * step;
  return Math.min(easiest, Math.max(hardest, value));
}
