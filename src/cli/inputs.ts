import { readFileSync, statSync } from 'node:fs';
import { InputFaults } from '../core/scenario/faults';
import { loadScenario } from '../core/scenario/load';
import type { Scenario } from '../core/scenario/schema';

/** Nothing larger is read at all. */
const LARGEST_BYTES = 64_000_000;
export const LARGEST_SCENARIO_BYTES = 2_000_000;

/** The text of a file, or of standard input for `-`. @throws InputFaults where it can't be read or is too large */
export function textOf(file: string, largestBytes = LARGEST_BYTES): string {
  const fault = (found: string, mend: string) => new InputFaults([{ file, path: '', found, mend }]);
  if (file === '-') return readFileSync(0, 'utf8');
  let bytes: number;
  try {
    const stat = statSync(file);
    if (stat.isDirectory()) throw fault('a folder', 'name a file');
    bytes = stat.size;
  } catch (error) {
    if (error instanceof InputFaults) throw error;
    throw fault('no such file, or it may not be read', 'check the name and where you are');
  }
  if (bytes > largestBytes)
    throw fault(`${(bytes / 1e6).toFixed(1)} MB, more than the ${largestBytes / 1e6} MB that are read`, 'give a smaller file');
  return readFileSync(file, 'utf8');
}

export const scenarioOf = (file: string): Scenario => loadScenario(file, textOf(file, LARGEST_SCENARIO_BYTES));

/** The arguments are wrong: exit 2. */
export class UsageError extends Error {}

/** A number from an option. @throws UsageError */
export function numberFrom(name: string, value: unknown, least: number, most: number): number {
  const number = typeof value === 'number' ? value : Number(String(value ?? '').trim() || Number.NaN);
  if (!Number.isFinite(number) || number < least || number > most) {
    throw new UsageError(
      `--${name} wants a number from ${least} to ${most}, found ${value === undefined ? 'nothing' : `"${String(value)}"`}`,
    );
  }
  return number;
}

/** `E,N` in metres. @throws UsageError */
export function placeFrom(name: string, value: unknown, sizeM: number): { readonly eM: number; readonly nM: number } {
  const parts = String(value ?? '').split(',');
  if (parts.length !== 2) throw new UsageError(`--${name} wants EAST,NORTH in metres, found "${String(value ?? '')}"`);
  return { eM: numberFrom(name, parts[0], 0, sizeM), nM: numberFrom(name, parts[1], 0, sizeM) };
}

/** A number of a tag in the scenario. @throws UsageError */
export const tagFrom = (value: unknown, scenario: Scenario): number => {
  const tag = value === undefined ? 0 : numberFrom('tag', value, 0, scenario.tags.length - 1);
  if (!Number.isInteger(tag)) throw new UsageError(`--tag wants a whole number, found ${tag}`);
  return tag;
};

/** One of some names. @throws UsageError */
export function oneOf<T extends string>(name: string, value: unknown, names: readonly T[]): T {
  if (!names.includes(value as T)) throw new UsageError(`--${name} wants one of ${names.join(', ')}, found "${String(value)}"`);
  return value as T;
}
