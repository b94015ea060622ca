import type { Fault } from '../scenario/faults';
import type { ClubReport } from './clubReport';
import type { Placed } from './rank';
import { savedTableOf } from './savedTable';
import type { ClubTable } from './tableRow';

/** The table as one JSON document: what it is kept by (`exercises`, `rows`), and the report that is made of it. */
export function tableDocument(table: ClubTable, report: ClubReport, faults: readonly Fault[], anonymous: boolean): object {
  return {
    ...savedTableOf(table, anonymous),
    report: {
      exercises: report.exercises.map(({ exercise: { digest, title }, words, runs }) => ({
        digest,
        title,
        words,
        runs: runs.map(placedRun),
      })),
      habits: report.picture.habits,
      teachNext: report.picture.teachNext,
      season: report.season,
      reliability: report.reliability,
      notes: report.notes,
    },
    faults,
  };
}

const placedRun = ({ row, technique, outcome, why }: Placed): object => ({
  name: row.name,
  by: row.by,
  begunAt: row.begunAt,
  placeByTechnique: technique,
  technique: row.technique,
  habits: row.habits,
  placeByOutcome: outcome,
  found: row.outcome?.found ?? null,
  timeS: row.outcome?.timeS ?? null,
  replay: row.mark,
  aided: row.aided,
  withInstructor: row.withInstructor ?? false,
  reasons: row.reasons,
  whyNoPlace: why,
});
