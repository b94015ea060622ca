import { effect, signal } from '@preact/signals';
import { savedTableOf } from '../../core/club/savedTable';
import type { ClubTable } from '../../core/club/tableRow';
import { PROGRAM_VERSION } from '../../core/run/record';
import { forgetClub, type KeptClub, keepClub, keptClub } from '../storage/club';
import { checkFiles } from '../workers/checkFiles';
import { anonymous, beginAnew, clubTable, scenarios, takeIn, taken, unsaved } from './clubTable';

/** Some seasons of a large club; at 20 bytes a point of a track, 12 MB. */
const MOST_ROWS = 3_000;
const MOST_POINTS = 600_000;
/** Own ground makes an exercise large; of the others the map is drawn on paper until one of their runs comes again. */
const MOST_SCENARIOS = 12;
/** Files come back from the workers in quick succession: they are kept together. */
const REST_MS = 300;

/** Whether this browser keeps the table: it has outgrown what is kept, or the browser refuses. */
export const keeping = signal<'kept' | 'outgrown' | 'refused'>('kept');

/** One after the other: a table that is cleared must not come back by a write that was under way. */
let last: Promise<unknown> = Promise.resolve();
let looked = false;
let timer = 0;

/** Goes on with the table of last time, once a page, and from then on keeps it as it grows. */
export async function goOnWithKept(): Promise<void> {
  if (looked) return;
  looked = true;
  const kept = await keptClub();
  if (kept && !(await takenUp(kept))) {
    keeping.value = 'refused'; // of another version perhaps, which may still want it: nothing is written over it
    return;
  }
  effect(() => {
    void [clubTable.value, scenarios.value, unsaved.value];
    clearTimeout(timer);
    timer = window.setTimeout(keepNow, REST_MS);
  });
  // At once: a reload in front of the projector must not bring the names back.
  effect(() => {
    void anonymous.value;
    keepNow();
  });
}

/** It comes in as a saved table would, read and checked in a worker. @returns whether it was taken */
async function takenUp(kept: KeptClub): Promise<boolean> {
  const text = JSON.stringify({ ...savedTableOf(kept.table, false), report: null, faults: [] });
  const file = new File([text], 'Table of last time', { type: 'application/json' });
  if (kept.anonymous) anonymous.value = true;
  let sound = false;
  await checkFiles([file], (_, { collected }) => {
    sound = collected.faults.length === 0;
    taken.value = [...taken.peek(), { file, collected }];
    const alone = clubTable.peek().rows.length === 0;
    takeIn(collected);
    if (alone) unsaved.value = kept.unsaved;
  }).done;
  if (kept.program === PROGRAM_VERSION) scenarios.value = new Map([...kept.scenarios, ...scenarios.peek()]);
  return sound;
}

function keepNow(): void {
  const table = clubTable.peek();
  if (table.rows.length === 0) return; // only `clearAll` takes away what is kept
  if (outgrown(table)) {
    keeping.value = 'outgrown';
    return;
  }
  const kept: KeptClub = {
    table,
    unsaved: unsaved.peek(),
    anonymous: anonymous.peek(),
    scenarios: [...scenarios.peek()].slice(-MOST_SCENARIOS),
    program: PROGRAM_VERSION,
  };
  last = last
    .then(() => keepClub(kept))
    .then((took) => {
      keeping.value = took ? 'kept' : 'refused';
    });
}

const outgrown = ({ rows }: ClubTable): boolean =>
  rows.length > MOST_ROWS || rows.reduce((points, { track }) => points + track.length, 0) > MOST_POINTS;

/** Begins with an empty table, here and in what the browser keeps. */
export function clearAll(): void {
  clearTimeout(timer);
  beginAnew();
  last = last.then(forgetClub);
}
