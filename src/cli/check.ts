import { recordingFrom } from '../core/run/record';
import { groundFaults } from '../core/run/soundness';
import { type Fault, InputFaults } from '../core/scenario/faults';
import { scenarioFrom } from '../core/scenario/load';
import { type Document, documentsOf, lineByLine } from './documents';
import { LARGEST_SCENARIO_BYTES, textOf } from './inputs';

export type Checked = { readonly file: string; readonly kind: 'scenario' | 'run' | 'unknown'; readonly faults: readonly Fault[] };

/** A run file may hold half an hour; anything else is held to the size of a scenario. */
const LARGEST_RUN_BYTES = 8_000_000;

/**
 * Looks for faults in scenario and run files; nothing is thrown for a file that is wrong. `emit` is called line by line for newline-delimited
 * input, which `asLines` says it is even where a share of a pile has only one line.
 */
export function checkCommand(files: readonly string[], asLines: boolean, emit: (checked: Checked) => void): readonly Checked[] {
  const results: Checked[] = [];
  for (const file of files) {
    for (const { checked, line } of checkedFile(file, asLines)) {
      results.push(checked);
      if (line) emit(checked);
    }
  }
  return results;
}

function checkedFile(file: string, asLines: boolean): readonly { readonly checked: Checked; readonly line: boolean }[] {
  try {
    const text = asLines ? textOf(file) : textOf(file, LARGEST_RUN_BYTES);
    if (asLines) return lineByLine(file, text).map((one) => ({ checked: checkedLine(one), line: true }));
    const { lines, documents } = documentsOf(file, text);
    return documents.map(({ name, value }) => ({ checked: checkedValue(name, value, text.length / documents.length), line: lines }));
  } catch (error) {
    if (error instanceof InputFaults) return [{ checked: { file, kind: 'unknown', faults: error.faults }, line: false }];
    throw error;
  }
}

const checkedLine = (one: Document | Fault): Checked =>
  'value' in one ? checkedValue(one.name, one.value, JSON.stringify(one.value).length) : { file: one.file, kind: 'unknown', faults: [one] };

function checkedValue(file: string, value: unknown, length: number): Checked {
  const format = typeof value === 'object' && value !== null ? (value as { format?: unknown }).format : undefined;
  const kind = format === 'faintward-run' ? 'run' : format === 'faintward-scenario' ? 'scenario' : 'unknown';
  try {
    if (kind === 'run') {
      recordingFrom(file, value);
      return { file, kind, faults: [] };
    }
    if (length > LARGEST_SCENARIO_BYTES) {
      const found = `${(length / 1e6).toFixed(1)} MB, more than the ${LARGEST_SCENARIO_BYTES / 1e6} MB of a scenario`;
      throw new InputFaults([{ file, path: '', found, mend: 'give a smaller file' }]);
    }
    return { file, kind, faults: groundFaults(file, scenarioFrom(file, value)) };
  } catch (error) {
    if (error instanceof InputFaults) return { file, kind, faults: error.faults };
    throw error;
  }
}
