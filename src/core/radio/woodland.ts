/** One frequency of the table: MHz, specific attenuation dB/m, greatest attenuation dB. @source ITU-R P.833 */
const TABLE: readonly (readonly [number, number, number])[] = [
  [105.9, 0.04, 9.4],
  [466.475, 0.12, 18.0],
  [949, 0.17, 26.5],
];

/** Power-law interpolation between the table's rows; the nearest pair goes on beyond its ends. */
function woodlandTerms(frequencyMHz: number): { gammaDbPerM: number; greatestDb: number } {
  const first = frequencyMHz <= TABLE[1]![0] ? 0 : 1;
  const [f0, gamma0, great0] = TABLE[first]!;
  const [f1, gamma1, great1] = TABLE[first + 1]!;
  const share = Math.log(frequencyMHz / f0) / Math.log(f1 / f0);
  return { gammaDbPerM: gamma0 * (gamma1 / gamma0) ** share, greatestDb: great0 * (great1 / great0) ** share };
}

/** Loss through `lengthM` metres under canopy, dB: Am (1 - exp(-d gamma / Am)). @source ITU-R P.833, equation (1) */
export function woodlandLossDb(lengthM: number, frequencyMHz: number): number {
  const { gammaDbPerM, greatestDb } = woodlandTerms(frequencyMHz);
  return greatestDb * (1 - Math.exp((-lengthM * gammaDbPerM) / greatestDb));
}
