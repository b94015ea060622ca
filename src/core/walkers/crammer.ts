import type { Walker } from './policy';
import { steady } from './steady';

/** Walks as the steady one does; all its practice of four weeks was on one day, most of it one skill. */
export const crammer: Walker = {
  ...steady,
  id: 'crammer',
  practice: { daysPractised: 1, longestGapDays: 24, dueShare: 0.2, largestSkillShare: 0.9 },
};
