import { readBook } from '../../core/logbook/bookFile';
import { readRecording } from '../../core/run/record';
import { InputFaults } from '../../core/scenario/faults';
import { loadScenario } from '../../core/scenario/load';
import type { FromReading, ToReading } from './readingMessages';

const READERS = { scenario: loadScenario, run: readRecording, book: readBook } as const;
const tell = (message: FromReading) => postMessage(message);

/** Parses and checks a file where it can be ended. */
addEventListener('message', async ({ data: { kind, file } }: MessageEvent<ToReading>) => {
  try {
    const text = await file.text();
    tell({ kind: 'begun' });
    tell({ kind: 'read', value: READERS[kind](file.name, text) });
  } catch (fault) {
    const found = `can’t be read: ${fault instanceof Error ? fault.message : String(fault)}`;
    const own = { file: file.name, path: '', found, mend: 'choose the file again' };
    tell({ kind: 'refused', faults: fault instanceof InputFaults ? fault.faults : [own] });
  }
});
