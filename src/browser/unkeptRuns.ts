import { signal } from '@preact/signals';
import type { FinishedRecord } from './storage/runs';
import type { RunPlace } from './storage/unfinished';

/** A run that ended and that the browser did not take yet: it is in memory, and tried again until it lies on the shelf. */
type Unkept = { readonly place: RunPlace; readonly record: FinishedRecord; readonly onKept: (key: number) => void };

const TRY_EVERY_MS = 5_000;
const waiting = signal<readonly Unkept[]>([]);
/** How many runs would go with this page. */
export const unkeptRuns = (): number => waiting.value.length;

let timer: ReturnType<typeof setInterval> | undefined;
let trying = false;

/** Puts a finished run on the shelf. @returns its key; `null` where the browser refused: then `onKept` hears of it when it is there */
export async function putOnShelf(place: RunPlace, record: FinishedRecord, onKept: (key: number) => void): Promise<number | null> {
  const key = await place.finish(record);
  if (key === null) setWaiting([...waiting.peek(), { place, record, onKept }]);
  return key;
}

/** Tries all of them once more. */
export async function tryUnkept(): Promise<void> {
  if (trying) return;
  trying = true;
  for (const one of waiting.peek()) {
    const key = await one.place.finish(one.record);
    if (key === null) continue;
    setWaiting(waiting.peek().filter((other) => other !== one));
    one.onKept(key);
  }
  trying = false;
}

function setWaiting(next: readonly Unkept[]): void {
  waiting.value = next;
  clearInterval(timer);
  if (next.length > 0) timer = setInterval(() => void tryUnkept(), TRY_EVERY_MS);
  window[next.length > 0 ? 'addEventListener' : 'removeEventListener']('beforeunload', askFirst);
}

/** The browser asks before it closes a page that has the only copy of a run. */
const askFirst = (event: Event): void => event.preventDefault();
