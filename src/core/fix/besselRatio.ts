/**
 * The mean resultant length A(kappa) = I1(kappa) / I0(kappa) of von Mises errors, and its exact inverse.
 * Both work with the shortfall 1 - A, so that sharp bearings (A within 1e-12 of 1) keep all their digits.
 */

/** From here on the asymptotic series is good to 1e-11 of the shortfall; below it the continued fraction is. */
const SERIES_FROM = 60;

/** 1 - A(kappa): 1 at kappa = 0, about 1 / (2 kappa) for large kappa. @throws RangeError unless kappa >= 0 */
export function resultantShortfall(kappa: number): number {
  if (!(kappa >= 0)) throw new RangeError(`concentration must be at least 0, got ${kappa}`);
  if (kappa < SERIES_FROM) return 1 - ratioByFraction(kappa);
  const u = 1 / kappa;
  // Asymptotic series of 1 - I1/I0 (quotient of the expansions in Abramowitz and Stegun 9.7.1, divided out for this project).
  return u * (1 / 2 + u * (1 / 8 + u * (1 / 8 + u * (25 / 128 + u * (13 / 32 + u * (1073 / 1024 + u * (103 / 32)))))));
}

/** A(kappa) = I1(kappa) / I0(kappa), in [0, 1). @throws RangeError unless kappa >= 0 */
export const besselRatio = (kappa: number): number => 1 - resultantShortfall(kappa);

/**
 * The kappa whose mean resultant length is 1 - `shortfall`: Infinity for a shortfall of 0 or less, 0 for 1 or more.
 * Newton steps on the shortfall, kept inside a bracket; A' = 1 - A/kappa - A^2.
 */
export function concentrationOf(shortfall: number): number {
  if (!(shortfall > 0)) return Infinity;
  if (shortfall >= 1) return 0;
  let lowest = 0;
  let highest = Infinity;
  let kappa = shortfall < 0.5 ? 1 / (2 * shortfall) : 2 * (1 - shortfall);
  for (let round = 0; round < 100; round++) {
    const found = resultantShortfall(kappa);
    if (found > shortfall) lowest = kappa;
    else highest = kappa;
    // Newton on 1 / shortfall, which is nearly straight in kappa where bearings are sharp.
    const slope = shortfallFall(kappa, found) / (found * found);
    const wanted = kappa + (1 / shortfall - 1 / found) / slope;
    const inside = wanted > lowest && wanted < highest;
    const next = inside ? wanted : highest === Infinity ? 2 * kappa : (lowest + highest) / 2;
    if (Math.abs(next - kappa) <= 1e-14 * kappa) return next;
    kappa = next;
  }
  return kappa;
}

/** How fast the shortfall falls with kappa, positive. */
function shortfallFall(kappa: number, shortfall: number): number {
  const u = 1 / kappa;
  if (kappa >= SERIES_FROM) return u * u * (1 / 2 + u * (1 / 4 + u * (3 / 8 + u * (25 / 32))));
  const ratio = 1 - shortfall;
  return 1 - ratio / kappa - ratio * ratio;
}

/** I1/I0 = 1 / (2/k + 1 / (4/k + 1 / (6/k + ...))), from the recurrence I(n-1) - I(n+1) = (2n/k) I(n) (Abramowitz and Stegun 9.6.26). */
function ratioByFraction(kappa: number): number {
  let ratio = 0;
  for (let n = 120; n >= 1; n--) ratio = kappa / (2 * n + kappa * ratio);
  return ratio;
}
