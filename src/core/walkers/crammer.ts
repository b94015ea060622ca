import type { Walker } from './policy';
import { walkerWith } from './steady';

/** Walks as the steady one does; all its practice of four weeks was on one day, most of it one skill. */
export const crammer: Walker = walkerWith('crammer', {}, { daysPractised: 1, longestGapDays: 24, dueShare: 0.2, largestSkillShare: 0.9 });
