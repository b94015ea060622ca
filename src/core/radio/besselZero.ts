/**
 * Bessel functions of order zero for real argument, absolute error below 1e-7.
 * @source M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 9.4.1 to 9.4.3: coefficients from memory, checked by the Wronskian-free
 * values J0(1) = 0.7651976866 and Y0(1) = 0.0882569642
 */
export function besselJ0(x: number): number {
  const ax = Math.abs(x);
  if (ax < 3) {
    const t = (x / 3) ** 2;
    return 1 + t * (-2.2499997 + t * (1.2656208 + t * (-0.3163866 + t * (0.0444479 + t * (-0.0039444 + t * 0.00021)))));
  }
  const { size, angle } = asymptotic(ax);
  return size * Math.cos(angle);
}

/** Second kind; x > 0. */
export function besselY0(x: number): number {
  if (x < 3) {
    const t = (x / 3) ** 2;
    const series =
      0.36746691 + t * (0.60559366 + t * (-0.74350384 + t * (0.25300117 + t * (-0.04261214 + t * (0.00427916 - t * 0.00024846)))));
    return (2 / Math.PI) * Math.log(x / 2) * besselJ0(x) + series;
  }
  const { size, angle } = asymptotic(x);
  return size * Math.sin(angle);
}

function asymptotic(x: number): { size: number; angle: number } {
  const t = 3 / x;
  const f = 0.79788456 + t * (-0.00000077 + t * (-0.0055274 + t * (-0.00009512 + t * (0.00137237 + t * (-0.00072805 + t * 0.00014476)))));
  const angle =
    x - 0.78539816 + t * (-0.04166397 + t * (-0.00003954 + t * (0.00262573 + t * (-0.00054125 + t * (-0.00029333 + t * 0.00013558)))));
  return { size: f / Math.sqrt(x), angle };
}
