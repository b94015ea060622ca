import { EMPTY_TABLE } from '../../core/club/mergeTables';
import type { FromClub, ToClub } from './clubMessages';
import { openWorker } from './openWorker';

/** Two at once: more gain little on a phone and take its memory. */
const WORKERS = 2;
/** No honest run takes so long to replay; whatever does is ended and told, ms. */
const MOST_MS = 300_000;
/** As many characters as a table may have, three bytes each: this is only the first look. */
const MOST_BYTES = 192_000_000;

export type Checking = { readonly done: Promise<void>; readonly stop: () => void };

/** Hands files to the workers, each its next as soon as it is done; `checked` is told of every file in the order they come back. */
export function checkFiles(files: readonly File[], checked: (index: number, answer: FromClub) => void): Checking {
  const workers = new Set<Worker>();
  let next = 0;
  let stopped = false;
  const lane = async () => {
    let worker: Worker | null = null;
    while (next < files.length && !stopped) {
      const index = next++;
      const file = files[index]!;
      if (file.size > MOST_BYTES) {
        checked(index, refusal(file.name, 'more than is read'));
        continue;
      }
      if (!worker) {
        worker = openWorker('club');
        workers.add(worker);
      }
      try {
        checked(index, await answered(worker, file));
      } catch (fault) {
        worker.terminate();
        workers.delete(worker);
        worker = null;
        checked(index, refusal(file.name, fault instanceof Error ? fault.message : String(fault)));
      }
    }
    worker?.terminate();
  };
  return {
    done: Promise.all(Array.from({ length: Math.min(WORKERS, files.length) }, lane)).then(() => {}),
    stop() {
      stopped = true;
      for (const worker of workers) worker.dispatchEvent(new ErrorEvent('error', { message: 'stopped before it was checked' }));
    },
  };
}

const refusal = (file: string, found: string): FromClub => ({
  collected: { table: EMPTY_TABLE, faults: [{ file, path: '', found, mend: 'give the run file as the program wrote it' }] },
  scenario: null,
});

const answered = (worker: Worker, file: File): Promise<FromClub> => {
  let timer = 0;
  return new Promise<FromClub>((resolve, reject) => {
    timer = window.setTimeout(() => reject(new Error('takes too long to replay')), MOST_MS);
    worker.onmessage = ({ data }: MessageEvent<FromClub>) => resolve(data);
    worker.onerror = ({ message }) => reject(new Error(message || 'can’t be replayed here'));
    const message: ToClub = { file };
    worker.postMessage(message);
  }).finally(() => clearTimeout(timer));
};
