import { writeFileSync } from 'node:fs';
import { antennaRows } from './fidelity/antennaRows';
import { bearingRows } from './fidelity/bearingRows';
import { deltaBullingtonRows } from './fidelity/deltaBullingtonRows';
import { fixRows } from './fidelity/fixRows';
import { hearingRows } from './fidelity/hearingRows';
import { phenomenaRows } from './fidelity/phenomenaRows';
import { propagationRows } from './fidelity/propagationRows';
import type { CheckRow } from './fidelity/row';
import { tradeRows } from './fidelity/tradeRows';

/** All rows that the program checks itself against; phenomena on the whole of their drawn grounds or on a small sample. */
export const allRows = (whole = false): readonly CheckRow[] => [
  ...propagationRows,
  ...deltaBullingtonRows,
  ...antennaRows,
  ...hearingRows,
  ...bearingRows,
  ...fixRows,
  ...tradeRows,
  ...phenomenaRows(whole),
];

export type CheckedRow = Omit<CheckRow, 'value'> & { readonly value: number; readonly pass: boolean };

export function fidelityCommand(whole = false): readonly CheckedRow[] {
  return allRows(whole).map((row) => {
    const value = row.value();
    return { ...row, value, pass: Math.abs(value - row.reference) <= row.tolerance };
  });
}

const shown = (value: number): string => (Number.isFinite(value) ? String(Number(value.toPrecision(8))) : String(value));

/** The rows as a page of the guide. */
export function fidelityPage(rows: readonly CheckedRow[]): string {
  const lines = rows.map(({ claim, unit, value, reference, tolerance, mark, pass, source }) => {
    const cells = [
      claim,
      `${shown(value)} ${unit}`.trim(),
      shown(reference),
      `±${shown(tolerance)}`,
      mark,
      pass ? 'pass' : '**fail**',
      source,
    ];
    return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  });
  return [
    '# Fidelity',
    '',
    'Every value that the program holds itself to, as last computed by `npm run fidelity`. Marks: **P** published, **M** published and quoted',
    'from memory, **D** derived or computed independently for this project, **T** common practice, no source. Where no measurement',
    'exists the reference is a computation, and the row says so.',
    '',
    `${rows.filter(({ pass }) => pass).length} of ${rows.length} rows pass.`,
    ...(deltaBullingtonRows.length > 0
      ? []
      : ['', 'Delta-Bullington is missing here: its published profiles are not handed on with the program.']),
    '',
    '| claim | value | reference | tolerance | mark | result | source |',
    '|---|---|---|---|---|---|---|',
    ...lines,
    '',
  ].join('\n');
}

export const writeFidelityPage = (file: string, rows: readonly CheckedRow[]): void => writeFileSync(file, fidelityPage(rows));
