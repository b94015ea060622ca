import type { Pattern } from './antenna';
import type { BodyShadow } from './body';
import { patternOf } from './pattern';
import type { WireChain } from './wireChain';
import { LIGHT_MHZ_M } from './wireSolver';

/** Solutions kept for one antenna: more than any exercise has tags and design frequencies. */
const MOST_KEPT = 64;

/**
 * The pattern of an antenna whose wires are written in wavelengths: scaled to the design frequency, solved at the frequency heard,
 * with the body behind it. Kept by both frequencies, since every pulse asks again.
 */
export function scaledPattern(
  wiresAt: (wavelengthM: number) => readonly WireChain[],
  bodyAt: (frequencyMHz: number) => BodyShadow,
): (frequencyMHz: number, designMHz: number) => Pattern {
  const kept = new Map<string, Pattern>();
  return (frequencyMHz, designMHz) => {
    const key = `${frequencyMHz}/${designMHz}`;
    const known = kept.get(key);
    if (known) return known;
    const made = { ...patternOf(wiresAt(LIGHT_MHZ_M / designMHz), frequencyMHz), body: bodyAt(frequencyMHz) };
    if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value!);
    kept.set(key, made);
    return made;
  };
}
