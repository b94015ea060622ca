import { type Fault, InputFaults } from './faults';

/** Largest scenario text that is read, bytes of UTF-8 at least its length in characters. */
export const LARGEST_TEXT = 2_000_000;

/**
 * The value in a JSON text.
 * @throws InputFaults where the text is too large, empty or not JSON; the fault says at which line and column
 */
export function jsonFrom(file: string, text: string, largest = LARGEST_TEXT): unknown {
  const fault = (found: string, mend: string): Fault => ({ file, path: '', found, mend });
  if (text.length > largest) {
    throw new InputFaults([fault(`${text.length} characters, more than the ${largest} that are read`, 'give a smaller file')]);
  }
  if (text.trim() === '') throw new InputFaults([fault('no text', 'give a JSON document')]);
  try {
    return JSON.parse(text.replace(/^\uFEFF/, '')) as unknown;
  } catch (error) {
    throw new InputFaults([fault(`not JSON${placeOf(String((error as Error).message), text)}`, jsonMend(text))]);
  }
}

function placeOf(message: string, text: string): string {
  const position = /position (\d+)/.exec(message)?.[1];
  if (position === undefined) return '';
  const before = text.slice(0, Number(position)).split('\n');
  return ` at line ${before.length}, column ${before.at(-1)!.length + 1}`;
}

const jsonMend = (text: string): string =>
  /\b(NaN|Infinity)\b/.test(text)
    ? 'write a number where NaN or Infinity stands'
    : 'check commas, quotes and brackets there, or open the file in an editor that knows JSON';
