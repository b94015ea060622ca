import { type Fault, InputFaults } from '../core/scenario/faults';
import { jsonFrom } from '../core/scenario/jsonText';

/** One JSON document of an input, with the name that faults are told by. */
export type Document = { readonly name: string; readonly value: unknown };

/** The largest input that is parsed: a season's table or a pile of runs. */
const LIMITS = { characters: 64_000_000, nodes: 12_000_000, depth: 24 };

/**
 * The documents of a text: one, or one a line where the text is newline-delimited JSON.
 * @throws InputFaults where neither reads
 */
export function documentsOf(file: string, text: string): { readonly lines: boolean; readonly documents: readonly Document[] } {
  const rows = text.split('\n').filter((row) => row.trim() !== '');
  if (rows.length < 2 || !rows.every((row) => row.trimStart().startsWith('{') && row.trimEnd().endsWith('}'))) {
    return { lines: false, documents: [{ name: file, value: jsonFrom(file, text, LIMITS) }] };
  }
  try {
    return {
      lines: true,
      documents: rows.map((row, i) => ({ name: `${file}:${i + 1}`, value: jsonFrom(`${file}:${i + 1}`, row, LIMITS) })),
    };
  } catch (ofLine) {
    if (ofLine instanceof InputFaults && !ofLine.faults[0]!.found.startsWith('not JSON')) throw ofLine;
    // Not a document a line after all: the whole text has to be one, and its fault is the one to tell.
    return { lines: false, documents: [{ name: file, value: jsonFrom(file, text, LIMITS) }] };
  }
}

/**
 * The same where one bad line must not lose the others: every document that reads, and a fault for each line that doesn't.
 * A text of which no line is a document of its own is one document, and its fault is the one to tell.
 */
export function readableDocuments(
  file: string,
  text: string,
): { readonly documents: readonly Document[]; readonly faults: readonly Fault[] } {
  try {
    return { documents: documentsOf(file, text).documents, faults: [] };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const tried = lineByLine(file, text);
    const documents = tried.filter((one): one is Document => 'value' in one);
    if (documents.length === 0) return { documents, faults: error.faults };
    return { documents, faults: tried.filter((one): one is Fault => !('value' in one)) };
  }
}

/** Every line that isn't empty as a document of its own, or as what is wrong with it: one answer a line, whatever the others are. */
export const lineByLine = (file: string, text: string): readonly (Document | Fault)[] =>
  text
    .split('\n')
    .map((row, i) => ({ row, name: `${file}:${i + 1}` }))
    .filter(({ row }) => row.trim() !== '')
    .map(({ row, name }) => lineValue(name, row));

function lineValue(name: string, row: string): Document | Fault {
  try {
    const value = jsonFrom(name, row, LIMITS);
    if (typeof value === 'object' && value !== null) return { name, value };
  } catch (error) {
    const [fault] = error instanceof InputFaults ? error.faults : [];
    if (fault && !fault.found.startsWith('not JSON')) return fault;
  }
  return {
    file: name,
    path: '',
    found: 'a line that is not a JSON document',
    mend: 'write each run whole on a line of its own, or leave the line out',
  };
}
