import type { Pattern } from './antenna';
import { patternOf } from './pattern';
import { rodAcross, type WireChain } from './wireChain';
import { LIGHT_MHZ_M } from './wireSolver';

/**
 * Pattern of an antenna whose wires are written in wavelengths: scaled to the design frequency, solved at the frequency heard.
 * Solutions are kept, since every tag asks for its own at every step; the last few hundred are enough for any exercise.
 */
export function scaledPattern(
  wiresInWavelengths: (wavelengthM: number) => readonly WireChain[],
): (frequencyMHz: number, designMHz: number) => Pattern {
  const known = new Map<string, Pattern>();
  return (frequencyMHz, designMHz) => {
    const key = `${frequencyMHz}/${designMHz}`;
    const found = known.get(key);
    if (found) return found;
    const pattern = patternOf(wiresInWavelengths(LIGHT_MHZ_M / designMHz), frequencyMHz);
    if (known.size >= MOST_KEPT) known.delete(known.keys().next().value ?? key);
    known.set(key, pattern);
    return pattern;
  };
}

const MOST_KEPT = 256;

/** Place along the boom, length and diameter of a rod, in wavelengths at the design frequency. */
export type RodInWavelengths = readonly [number, number, number];

/** Rods across the boom, one of them driven. */
export const rodsInWavelengths =
  (rods: readonly RodInWavelengths[], driven: number) =>
  (wavelengthM: number): readonly WireChain[] =>
    rods.map(([along, length, diameter], i) =>
      rodAcross(
        along * wavelengthM,
        length * wavelengthM,
        diameter * wavelengthM,
        i === driven ? { amplitude: 1, phaseDeg: 0 } : undefined,
      ),
    );
