import type { Walker } from './policy';
import { walkerWith } from './steady';

/** Stands five seconds for each it walks, between the places that the steady one would read from. */
export const rooted: Walker = walkerWith('rooted', { standsPerWalkedS: 5 });
