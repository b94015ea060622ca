import { STEADY_DECISIONS } from './hunt';
import type { Walker } from './policy';
import { walkerWith } from './steady';

/** Sets this much more gain than needed, and takes none away when the sound is flat out. */
const loudHanded = (moreDb: number): Walker =>
  walkerWith(`loud-handed-${moreDb}`, { wantedDb: STEADY_DECISIONS.wantedDb + moreDb, cuts: false });

export const loudHanded6 = loudHanded(6);
export const loudHanded12 = loudHanded(12);
export const loudHanded20 = loudHanded(20);
