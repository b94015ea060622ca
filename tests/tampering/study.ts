import { makeCollector } from '../../src/core/club/collect';
import { randomFor } from '../../src/core/random/draw';
import { type Recording, writeRecording } from '../../src/core/run/record';
import { runSealOf } from '../../src/core/run/runSeal';
import { digestOf } from '../../src/core/scenario/seal';
import { EDITS, type Open } from './edits';

/** Degrees of each kind: 15 of each of 34 are 510 edits. */
export const DEGREES = 15;

export type Edited = { readonly part: string; readonly kind: string; readonly degree: number; readonly run: Recording };

/** Every kind of edit of a run, `degrees` of each, from the least to a gross one. */
export const editedFrom = (original: Recording, degrees: number): readonly Edited[] =>
  EDITS.flatMap(({ part, kind, make }) =>
    Array.from({ length: degrees }, (_, i): Edited => {
      const degree = degrees === 1 ? 0.5 : i / (degrees - 1);
      const run = structuredClone(original) as Open;
      make(run, degree, randomFor(`${part}-${kind}-${i}`, 'test'));
      return { part, kind, degree, run };
    }),
  );

/** As one would who knows how digest and seal are worked out: nothing but the replay is left to find the edit. */
export function resealed(run: Recording): Recording {
  const digested = { ...run, digest: digestOf(run.scenario) };
  return { ...digested, seal: runSealOf(digested) };
}

/** Holds run files against an honest one of an exercise, as the table reads them. */
export function makeJudge(): {
  readonly isClean: (run: Recording) => boolean;
  readonly isFound: (run: Recording, digest: string) => boolean;
} {
  const collect = makeCollector();
  const lineOf = (run: Recording) => collect('run.json', JSON.parse(writeRecording(run)));
  return {
    isClean(run) {
      const { table, faults } = lineOf(run);
      return faults.length === 0 && table.rows[0]!.mark === 'checked';
    },
    // An edited exercise replays, but as another exercise: its runs are not in the table of the honest ones.
    isFound(run, digest) {
      const { table, faults } = lineOf(run);
      const [row] = table.rows;
      return faults.length > 0 || row!.mark !== 'checked' || row!.exercise !== digest;
    },
  };
}
