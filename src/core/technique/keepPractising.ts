import type { Practice } from '../run/record';
import { type HabitResult, linearScore, type Moment, notShown, telling, weightedMean } from './habit';

/** Two days a week of the last four weeks. */
const FULL_DAYS = 8;
const FULL_GAP_DAYS = 5;
const NO_MARKS_GAP_DAYS = 14;
/** No more than this share of the minutes on one skill; all of them on one is no variety. */
const FULL_SKILL_SHARE = 0.6;

type Part = { readonly name: string; readonly score: number | null; readonly what: string; readonly next: string };

/**
 * The last 28 days, from the logbook; in a run file the learner's own statement. It never enters technique. Its moments are of
 * weeks, not of a run: they stand at 0 s.
 */
export function judgePractice(practice: Practice | undefined): HabitResult {
  if (!practice) return notShown('The run carries no statement from the logbook.');
  const parts = partsOf(practice);
  return {
    score: weightedMean(parts.map(({ score }) => ({ score, weight: 1 }))),
    components: Object.fromEntries(parts.map(({ name, score }) => [name, score])),
    moments: telling(parts.flatMap(momentOf)),
    whyNotShown: '',
  };
}

function partsOf({ daysPractised, longestGapDays, dueShare, largestSkillShare }: Practice): readonly Part[] {
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  return [
    {
      name: 'days',
      score: linearScore(daysPractised, FULL_DAYS, 0),
      what: `You practised on ${daysPractised} of the last 28 days.`,
      next: 'Practise twice a week, ten minutes each time, rather than long on one day.',
    },
    {
      name: 'gap',
      score: linearScore(longestGapDays, FULL_GAP_DAYS, NO_MARKS_GAP_DAYS),
      what: `Your longest gap without practice was ${longestGapDays} days.`,
      next: 'Let no more than five days pass before the next drill.',
    },
    {
      name: 'due',
      score: dueShare === null ? null : 100 * dueShare,
      what: `You did ${percent(dueShare ?? 0)} of the due drills within two days of their date.`,
      next: 'Open the Logbook first and do the drill that is due today.',
    },
    {
      name: 'variety',
      // Without a day of practice there are no minutes to share out.
      score: daysPractised === 0 ? null : linearScore(largestSkillShare, FULL_SKILL_SHARE, 1),
      what: `You spent ${percent(largestSkillShare)} of your minutes on one skill.`,
      next: 'Choose a drill of another skill next.',
    },
  ];
}

function momentOf({ score, what, next }: Part): readonly Moment[] {
  if (score === null) return [];
  const good = score >= 50;
  return [{ fromS: 0, toS: 0, what, next: good ? `Go on so. ${next}` : next, weight: good ? score / 2 : 100 - score, good }];
}
