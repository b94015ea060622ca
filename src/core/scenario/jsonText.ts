import { type Fault, InputFaults } from './faults';
import { type JsonLimits, scanJson } from './jsonScan';

/** Largest scenario text that is read, bytes of UTF-8 at least its length in characters. */
export const LARGEST_TEXT = 2_000_000;

/** What a scenario and the other small formats may hold: a full scenario has some 2,000 values, 7 deep. */
const SMALL: JsonLimits = { characters: LARGEST_TEXT, nodes: 60_000, depth: 16 };

/**
 * The value in a JSON text from outside. Every format of the program comes in here: what is too large, too deep or too full, names
 * a key twice or one of JavaScript's own, or misleads the eye is refused before anything is built of it.
 * @throws InputFaults where the text is too large, empty, not JSON or not to be trusted; the fault says at which line and column
 */
export function jsonFrom(file: string, text: string, most: Partial<JsonLimits> = {}): unknown {
  const limits = { ...SMALL, ...most };
  const fault = (found: string, mend: string): Fault => ({ file, path: '', found, mend });
  if (text.length > limits.characters) {
    throw new InputFaults([fault(`${text.length} characters, more than the ${limits.characters} that are read`, 'give a smaller file')]);
  }
  const plain = text.replace(/^\uFEFF/, '');
  if (plain.trim() === '') throw new InputFaults([fault('no text', 'give a JSON document')]);
  const scan = scanJson(plain, limits);
  if (scan.fault) {
    const { at, found } = scan.fault;
    throw new InputFaults([fault(`${found}${placeAt(at, plain)}`, 'use the file as a program of ours wrote it, or mend it there')]);
  }
  try {
    return JSON.parse(plain, scan.minusZero ? withoutMinusZero : undefined) as unknown;
  } catch (error) {
    throw new InputFaults([fault(`not JSON${placeOf(String((error as Error).message), plain)}`, jsonMend(plain))]);
  }
}

/** A digest reads -0 as 0: so must whoever computes with it. */
const withoutMinusZero = (_key: string, value: unknown): unknown => (value === 0 ? 0 : value);

function placeOf(message: string, text: string): string {
  const position = /position (\d+)/.exec(message)?.[1];
  return position === undefined ? '' : placeAt(Number(position), text);
}

function placeAt(at: number, text: string): string {
  const before = text.slice(0, at).split('\n');
  return ` at line ${before.length}, column ${before.at(-1)!.length + 1}`;
}

const jsonMend = (text: string): string =>
  /\b(NaN|Infinity)\b/.test(text)
    ? 'write a number where NaN or Infinity stands'
    : 'check commas, quotes and brackets there, or open the file in an editor that knows JSON';
