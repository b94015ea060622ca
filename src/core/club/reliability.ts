import { icc21, minimalDetectableChange, runsFor, standardError } from '../walkers/validityNumbers';
import { rankedRows } from './habitPicture';
import { type ClubTable, personOf } from './tableRow';

/** How far technique can be relied on: of one run, 0 to 1; runs that average to 0.8; smallest change that is not chance. */
export type Reliability = {
  readonly from: 'this table' | 'the validity study';
  readonly ofOneRun: number;
  readonly runsFor08: number | null;
  readonly detectableChange: number;
  readonly note: string;
};

/** The study's own numbers, its row "technique"; a test holds them against the guide's page. */
export const STUDY = { ofOneRun: 0.62, runsFor08: 3, detectableChange: 18.2 } as const;

/** Fewer people or exercises tell nothing of their own. */
const LEAST_PEOPLE = 5;
const LEAST_EXERCISES = 3;

/** From the table's own runs where enough people walked the same exercises, else from the validity study. */
export function reliabilityOf(table: ClubTable): Reliability {
  const scores = completeScores(table);
  const single = scores ? icc21(scores) : null;
  const error = scores ? standardError(scores) : null;
  if (!scores || single === null || error === null) return said({ from: 'the validity study', ...STUDY });
  const detectableChange = Math.round(10 * minimalDetectableChange(error)) / 10;
  return said({ from: 'this table', ofOneRun: Math.round(100 * single) / 100, runsFor08: runsFor(0.8, single), detectableChange });
}

function said(numbers: Omit<Reliability, 'note'>): Reliability {
  const { from, ofOneRun, runsFor08, detectableChange } = numbers;
  const many = runsFor08 === null ? 'no number of runs like these' : runsFor08 === 1 ? 'one run' : `the mean of ${runsFor08} runs`;
  const note =
    `Technique of one run is reliable to ${ofOneRun.toFixed(2)} (by ${from}); ${many} reaches 0.8. ` +
    `Two single runs that differ by less than ${detectableChange.toFixed(1)} points may differ by chance: places within that are not a verdict. ` +
    'A replay proves the run, not who walked it. A score in the simulator is not a score in the field.';
  return { ...numbers, note };
}

/** Technique of everybody who walked every exercise, a row a person; `null` where too few did. */
function completeScores(table: ClubTable): readonly (readonly number[])[] | null {
  const exercises = table.exercises.map(({ digest }) => digest);
  const people = new Map<string, Map<string, number>>();
  for (const row of rankedRows(table)) {
    if (row.technique === null) continue;
    const own = people.get(personOf(row)) ?? new Map<string, number>();
    own.set(row.exercise, own.get(row.exercise) ?? row.technique);
    people.set(personOf(row), own);
  }
  const complete = [...people.values()].filter((own) => exercises.every((exercise) => own.has(exercise)));
  if (complete.length < LEAST_PEOPLE || exercises.length < LEAST_EXERCISES) return null;
  return complete.map((own) => exercises.map((exercise) => own.get(exercise)!));
}
