import type { Outcome } from './grade';

/** What came of a run, in two or three words. */
export function outcomeWords({ found, fix }: Pick<Outcome, 'found' | 'fix'>): string {
  if (fix === undefined) return found ? 'found' : 'not found';
  return fix === null || fix.offM === null ? 'no fix' : `fix ${fix.offM} m off`;
}
