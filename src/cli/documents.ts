import { InputFaults } from '../core/scenario/faults';
import { jsonFrom } from '../core/scenario/jsonText';

/** One JSON document of an input, with the name that faults are told by. */
export type Document = { readonly name: string; readonly value: unknown };

/** Largest input that is parsed, characters. */
const LARGEST = 64_000_000;

/**
 * The documents of a text: one, or one a line where the text is newline-delimited JSON.
 * @throws InputFaults where neither reads
 */
export function documentsOf(file: string, text: string): { readonly lines: boolean; readonly documents: readonly Document[] } {
  const rows = text.split('\n').filter((row) => row.trim() !== '');
  if (rows.length < 2 || !rows.every((row) => row.trimStart().startsWith('{') && row.trimEnd().endsWith('}'))) {
    return { lines: false, documents: [{ name: file, value: jsonFrom(file, text, LARGEST) }] };
  }
  try {
    return { lines: true, documents: rows.map((row, i) => ({ name: `${file}:${i + 1}`, value: JSON.parse(row) as unknown })) };
  } catch {
    // Not a document a line after all: the whole text has to be one, and its fault is the one to tell.
    try {
      return { lines: false, documents: [{ name: file, value: jsonFrom(file, text, LARGEST) }] };
    } catch (error) {
      throw error instanceof InputFaults ? error : new Error(String(error));
    }
  }
}
