import type { Air } from './air';
import type { Settings } from './settings';

/** Airs that were worked out already, by what they depend on. */
const MOST_KEPT = 64;

/** An air for settings, made anew only when `keyOf` says something else. */
export function keptBy(keyOf: (settings: Settings) => string | number, make: (settings: Settings) => Air): (settings: Settings) => Air {
  const kept = new Map<string | number, Air>();
  return (settings) => {
    const key = keyOf(settings);
    const known = kept.get(key);
    if (known) return known;
    if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value!);
    const made = make(settings);
    kept.set(key, made);
    return made;
  };
}
