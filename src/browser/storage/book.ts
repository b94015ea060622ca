import { signal } from '@preact/signals';
import type { DBSchema } from 'idb';
import { type Book, emptyBook, mergedBooks, withRecord } from '../../core/logbook/book';
import type { Day } from '../../core/logbook/day';
import type { BookRecord } from '../../core/logbook/record';
import { faultOf, inOneGo, type KeepFault, shelfOf } from './shelf';

/** The logbook as far as it has been read; `null` until it has. */
export const book = signal<Book | null>(null);
/** Why the last entries are in memory only; empty where all of them are kept. */
export const keepFault = signal<KeepFault>('');

interface Shelf extends DBSchema {
  records: { key: string; value: BookRecord };
}

const shelf = shelfOf<Shelf>('faintward-logbook', 1, (db) => {
  db.createObjectStore('records', { keyPath: 'id' });
});

/** Other tabs of this program hear of every new entry, so that no tab works from an old book. */
const tabs = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('faintward-logbook');
if (tabs) tabs.onmessage = () => void readBookAgain();

/** Entries that the browser would not keep yet. */
let unkept: readonly BookRecord[] = [];

/** Reads the book once; what is in memory already stays. */
export async function openBook(): Promise<Book> {
  if (!book.peek()) await readBookAgain();
  return book.peek()!;
}

async function readBookAgain(): Promise<void> {
  try {
    const records = await (await shelf()).getAll('records');
    book.value = mergedBooks(mergedBooks(records, unkept), book.peek() ?? emptyBook());
  } catch {
    book.value = book.peek() ?? emptyBook();
    keepFault.value = 'refused';
  }
}

/**
 * Adds entries to the book: at once for whoever looks at it, and to the browser's shelf with all that could not be kept before.
 * Entries are only ever added, so two tabs can't undo one another.
 */
export async function keepInBook(records: readonly BookRecord[]): Promise<void> {
  await openBook();
  const asked = [...unkept, ...records];
  book.value = records.reduce(withRecord, book.peek()!);
  unkept = asked;
  try {
    await inOneGo(await shelf(), ['records'], async (go) => {
      for (const record of asked) await go.objectStore('records').put(record);
    });
    unkept = unkept.filter((record) => !asked.includes(record));
    keepFault.value = '';
    tabs?.postMessage('kept');
  } catch (fault) {
    keepFault.value = faultOf(fault);
  }
}

/** The day that it is here. */
export function today(now = new Date()): Day {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** What every entry begins with. */
export function entryNow(): { readonly id: string; readonly atMs: number; readonly day: Day } {
  // randomUUID is for secure pages only; a club's own network has none.
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return { id: [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join(''), atMs: Date.now(), day: today() };
}

/** Asks the browser not to clear the book when room gets short. @returns whether it said yes; `null` where it can't be asked */
export async function askToPersist(): Promise<boolean | null> {
  try {
    if (await navigator.storage.persisted()) return true;
    return await navigator.storage.persist();
  } catch {
    return null;
  }
}
