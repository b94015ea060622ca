import { PROGRAM_VERSION } from '../run/record';
import { URL_NAMESPACE, uuidFor } from '../scenario/seal';
import type { ClubReport } from './clubReport';
import { personOf, type TableExercise, type TableRow } from './tableRow';
import { utcInstant } from './utcInstant';

/** Our own names live under a domain that RFC 2606 keeps for nobody: nothing is fetched from there. */
const HOME = 'https://faintward.example';
/** Verbs and activity type of the vocabulary that the xAPI specification's own examples use. */
const VERBS = 'http://adlnet.gov/expapi/verbs';
const SIMULATION = 'http://adlnet.gov/expapi/activities/simulation';

/**
 * A statement (xAPI 1.0.3) for every run that replays: who did what, with what result. People are accounts by nickname, never
 * addresses; no time is made up for a run without a date. The same run gives the same id, so that sending twice adds nothing.
 */
export const statementsOf = (report: ClubReport): readonly object[] =>
  report.exercises.flatMap(({ exercise, runs }) => runs.filter(({ row }) => row.sound).map(({ row }) => statementOf(exercise, row)));

function statementOf(exercise: TableExercise, row: TableRow): object {
  const ending = row.outcome?.ending ?? null;
  const ended = ending !== null && ending !== 'gave-up';
  const verb = ended ? 'completed' : 'attempted';
  return {
    id: uuidFor(URL_NAMESPACE, `${HOME}/run/${row.run}/${personOf(row)}/${row.gradedBy}`),
    actor: {
      objectType: 'Agent',
      name: row.name || 'no name',
      account: { homePage: `${HOME}/${row.by}`, name: personOf(row) },
    },
    verb: { id: `${VERBS}/${verb}`, display: { en: verb } },
    object: {
      objectType: 'Activity',
      id: `${HOME}/exercise/${exercise.digest}`,
      definition: {
        type: SIMULATION,
        name: { en: exercise.title },
        description: { en: `Radio direction finding on foot, lesson ${exercise.lesson}, level ${exercise.level}` },
      },
    },
    result: resultOf(row, ended),
    context: { platform: `Faintward ${PROGRAM_VERSION}`, language: 'en' },
    ...(row.begunAt === null ? {} : { timestamp: utcInstant(row.begunAt, seconds(row)) }),
  };
}

const seconds = (row: TableRow): number => row.outcome?.timeS ?? 0;

function resultOf(row: TableRow, ended: boolean): object {
  const { technique } = row;
  const score = technique === null ? {} : { score: { scaled: Math.round(technique * 10) / 1000, raw: technique, min: 0, max: 100 } };
  return {
    ...score,
    success: row.outcome?.found ?? false,
    completion: ended,
    duration: `PT${seconds(row).toFixed(2)}S`,
    extensions: {
      [`${HOME}/habits`]: row.habits,
      [`${HOME}/replay`]: row.mark,
      [`${HOME}/aided`]: row.aided,
      [`${HOME}/with-instructor`]: row.withInstructor ?? false,
    },
  };
}
