import type { Scenario } from '../../core/scenario/schema';

/** What an exercise is about, in a few words. */
export const LESSON_WORDS: Readonly<Record<Scenario['lesson'], string>> = {
  'quiet-gain': 'use little gain',
  'back-signal': 'front or back',
  axis: 'flat or upright',
  bounce: 'a hillside that answers',
  wires: 'beside a power line',
  'clear-view': 'find the clear view',
  crossing: 'cross the bearings',
  moving: 'a tag that moves',
  several: 'several tags',
  night: 'by ear alone',
  'close-in': 'the last fifty metres',
  search: 'find it',
};
