import { antennaRows } from './fidelity/antennaRows';
import { fixRows } from './fidelity/fixRows';
import { hearingRows } from './fidelity/hearingRows';
import { propagationRows } from './fidelity/propagationRows';
import type { CheckRow } from './fidelity/row';

/** All rows that the program checks itself against. */
export const allRows = (): readonly CheckRow[] => [...propagationRows, ...antennaRows, ...hearingRows, ...fixRows];

export type CheckedRow = Omit<CheckRow, 'value'> & { readonly value: number; readonly pass: boolean };

export function fidelityCommand(): readonly CheckedRow[] {
  return allRows().map((row) => {
    const value = row.value();
    return { ...row, value, pass: Math.abs(value - row.reference) <= row.tolerance };
  });
}
