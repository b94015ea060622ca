import { BOOK_LIMITS } from '../../core/logbook/bookFile';
import { RUN_LIMITS } from '../../core/run/record';
import { InputFaults } from '../../core/scenario/faults';
import { LARGEST_TEXT } from '../../core/scenario/jsonText';
import { openWorker } from './openWorker';
import type { FromReading, Readable, ToReading } from './readingMessages';

/** A character takes up to three bytes in a file, and is counted as one by the reader: this is only the first look. */
const BYTES_A_CHARACTER = 3;
const LARGEST_BYTES: Readonly<Record<keyof Readable, number>> = {
  scenario: BYTES_A_CHARACTER * LARGEST_TEXT,
  run: BYTES_A_CHARACTER * RUN_LIMITS.characters,
  book: BYTES_A_CHARACTER * BOOK_LIMITS.characters,
};
/** A file is given up after so long for each megabyte, ms, beside a second in which a busy device comes to it at all. */
const MS_PER_MB = 250;
const START_MS = 1_000;

/**
 * Reads a person's own file in a worker that is ended when it takes too long: nothing in a file can hold the page up.
 * @throws InputFaults with every fault, too large and too long among them
 */
export function readFile<K extends keyof Readable>(kind: K, file: File): Promise<Readable[K]> {
  const refusal = (found: string) => new InputFaults([{ file: file.name, path: '', found, mend: 'give a smaller file' }]);
  if (file.size > LARGEST_BYTES[kind]) {
    return Promise.reject(refusal(`${(file.size / 1e6).toFixed(1)} MB, more than the ${LARGEST_BYTES[kind] / 1e6} MB that are read`));
  }
  const worker = openWorker('reading');
  const mostMs = START_MS + MS_PER_MB * Math.ceil(file.size / 1e6);
  let timer = 0;
  return new Promise<Readable[K]>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<FromReading>) => {
      if (data.kind === 'begun') timer = window.setTimeout(() => reject(refusal(`takes more than ${mostMs} ms to read`)), mostMs);
      else if (data.kind === 'read') resolve(data.value as Readable[K]);
      else reject(new InputFaults(data.faults));
    };
    worker.onerror = ({ message }) => reject(refusal(`could not be read: ${message}`));
    const message: ToReading = { kind, file };
    worker.postMessage(message);
  }).finally(() => {
    clearTimeout(timer);
    worker.terminate();
  });
}
