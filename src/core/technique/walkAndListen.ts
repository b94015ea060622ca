import { followsPart } from './followsPart';
import { type Evidence, type Habit, type HabitResult, notShown, telling } from './habit';
import { keepsLinePart } from './keepsLinePart';
import { movesPart } from './movesPart';
import { type Outlook, outlookOf } from './outlook';
import { spreadsPart } from './spreadsPart';
import { walkEvidence } from './walkEvidence';

/** Reading on the move, spread out, along the line that the sound supports. */
export const walkAndListen: Habit = {
  id: 'walkAndListen',
  name: 'Walk and listen',
  judge: (evidence) => judgeWalk(evidence, outlookOf(evidence.exercise.world)),
};

/** Score: half the mean of the shown parts and half the lowest of them, so that no part makes up for another left out. */
export function judgeWalk(evidence: Evidence, outlook: Outlook): HabitResult {
  const walk = walkEvidence(evidence, outlook);
  const parts = { moves: movesPart(walk), spreads: spreadsPart(walk), follows: followsPart(walk), keepsLine: keepsLinePart(walk) };
  const components = Object.fromEntries(Object.entries(parts).map(([name, { score }]) => [name, score]));
  const shown = Object.values(components).filter((score) => score !== null);
  if (shown.length === 0) return notShown('There was too little hunting to see how you walk.', components);
  const mean = shown.reduce((sum, score) => sum + score, 0) / shown.length;
  const moments = telling(Object.values(parts).flatMap((part) => part.moments));
  return { score: (mean + Math.min(...shown)) / 2, components, moments, whyNotShown: '' };
}
