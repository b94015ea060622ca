import type { Walker } from './policy';
import { walkerWith } from './steady';

/** Reads in hollows and behind banks, where the ground sees least. */
export const lowLying: Walker = walkerWith('low-lying', { reads: 'low' });
