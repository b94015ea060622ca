import { computed, signal } from '@preact/signals';
import { withoutNames } from '../../core/club/anonymous';
import { clubReport } from '../../core/club/clubReport';
import { type Collected, collectedTable } from '../../core/club/collect';
import { EMPTY_TABLE, mergeTables } from '../../core/club/mergeTables';
import type { ClubTable } from '../../core/club/tableRow';
import type { Scenario } from '../../core/scenario/schema';
import { type Checking, checkFiles } from '../workers/checkFiles';

/** A file that was dropped, and what came of it as soon as that is known. */
export type Taken = { readonly file: File; readonly collected: Collected | null };

export const taken = signal<readonly Taken[]>([]);
export const clubTable = signal<ClubTable>(EMPTY_TABLE);
/** Exercises whose ground can be drawn, by digest. */
export const scenarios = signal<ReadonlyMap<string, Scenario>>(new Map());
/** Names are kept off the screen and out of every export but the saved table. */
export const anonymous = signal(false);
/** The table has grown since it was saved. */
export const unsaved = signal(false);
export const order = signal<'technique' | 'outcome'>('technique');
/** Digest of the exercise that is looked at. */
export const chosenExercise = signal<string | null>(null);

export const shownTable = computed(() => (anonymous.value ? withoutNames(clubTable.value) : clubTable.value));
export const report = computed(() => clubReport(shownTable.value));
export const checking = computed(() => taken.value.some(({ collected }) => collected === null));
/** The exercise that is looked at: the chosen one, else the one most walked. */
export const exerciseNow = computed(() => {
  const { exercises } = report.value;
  const chosen = exercises.find(({ exercise }) => exercise.digest === chosenExercise.value);
  return chosen ?? [...exercises].sort((a, b) => b.runs.length - a.runs.length)[0] ?? null;
});

const going = new Set<Checking>();

/** Checks files and takes what they hold into the table; those of before stay. */
export async function takeFiles(files: readonly File[]): Promise<void> {
  const before = taken.peek().length;
  taken.value = [...taken.peek(), ...files.map((file) => ({ file, collected: null }))];
  const work = checkFiles(files, (index, { collected, scenario }) => {
    taken.value = taken.peek().map((one, i) => (i === before + index ? { ...one, collected } : one));
    const digest = collected.table.rows[0]?.exercise;
    if (scenario && digest !== undefined) scenarios.value = new Map([...scenarios.peek(), [digest, scenario]]);
    takeIn(collected);
  });
  going.add(work);
  await work.done;
  going.delete(work);
  const unchecked = (one: Taken): Taken => ({ ...one, collected: one.collected ?? NOT_CHECKED });
  if (going.size === 0) taken.value = taken.peek().map(unchecked);
}

/** Takes the rows of what was collected into the table. */
export function takeIn(collected: Collected): void {
  if (collected.table.rows.length === 0) return;
  clubTable.value = mergeTables(clubTable.peek(), collectedTable([collected]).table);
  unsaved.value = true;
}

const NOT_CHECKED: Collected = {
  table: EMPTY_TABLE,
  faults: [{ file: '', path: '', found: 'stopped before it was checked', mend: 'give it again' }],
};

export function stopChecking(): void {
  for (const work of going) work.stop();
}

export function beginAnew(): void {
  stopChecking();
  taken.value = [];
  clubTable.value = EMPTY_TABLE;
  unsaved.value = false;
  chosenExercise.value = null;
}

/** The file that a run came from, where it is one run's and still at hand. */
export const fileOfRun = (run: string): File | null =>
  taken.value.find(({ collected }) => collected?.table.rows.length === 1 && collected.table.rows[0]!.run === run)?.file ?? null;
