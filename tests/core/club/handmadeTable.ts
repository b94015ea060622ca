import { clubReport } from '../../../src/core/club/clubReport';
import { mergeTables } from '../../../src/core/club/mergeTables';
import type { ClubTable, TableExercise, TableRow } from '../../../src/core/club/tableRow';
import { digestOf } from '../../../src/core/scenario/seal';

export const FELL: TableExercise = {
  digest: digestOf('fell'),
  title: 'Open fell',
  lesson: 'quiet-gain',
  level: 1,
  sizeM: 2_000,
  seed: 'high-skelder',
  timeS: 2_700,
  findWithinM: 12,
  startAt: [442, 322],
  tags: [{ name: 'Merle', at: [1_150, 1_006] }],
};

type Changes = Partial<Omit<TableRow, 'outcome' | 'habits'>> & {
  readonly outcome?: Partial<NonNullable<TableRow['outcome']>> | null;
  readonly habits?: Partial<TableRow['habits']>;
};

/** A sound run by a person: found in ten minutes with technique 80, unless said otherwise. */
export function handmadeRow(name: string, { outcome = {}, habits, ...changes }: Changes = {}): TableRow {
  return {
    run: digestOf(`${name}/${JSON.stringify({ outcome, habits, ...changes })}`),
    name,
    by: 'person',
    exercise: FELL.digest,
    mark: 'checked',
    sound: true,
    reasons: [],
    aided: false,
    program: '0.1.0',
    gradedBy: '0.1.0',
    begunAt: '2026-05-12T19:30:05+02:00',
    technique: 80,
    habits: { quietGain: 70, setThenSweep: 90, walkAndListen: 85, clearView: null, ...habits },
    practice: null,
    outcome: outcome && {
      found: true,
      ending: 'found',
      timeS: 600,
      walkedM: 900,
      declarations: 1,
      bearingErrorDeg: 6.5,
      guessErrorM: null,
      ...outcome,
    },
    advice: [],
    track: [
      [0, 442, 322],
      [300, 800, 700.5],
      [600, 1_145.2, 1_000],
    ],
    ...changes,
  };
}

export const tableOf = (...rows: readonly TableRow[]): ClubTable =>
  mergeTables({ exercises: [FELL], rows: [] }, { exercises: [FELL], rows });

export const reportOf = (...rows: readonly TableRow[]) => clubReport(tableOf(...rows));
