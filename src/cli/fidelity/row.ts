/**
 * One check value: what the program gives beside what it must give. `value` is computed when asked for.
 * Marks: P published, M published and quoted from memory, D derived or computed independently for this project, T common practice.
 */
export type CheckRow = {
  readonly claim: string;
  readonly unit: string;
  readonly value: () => number;
  readonly reference: number;
  readonly tolerance: number;
  readonly mark: 'P' | 'M' | 'D' | 'T';
  readonly source: string;
};

type Terms = Pick<CheckRow, 'unit' | 'tolerance' | 'mark' | 'source'>;

/** Rows that share unit, tolerance, mark and source: claim, value, reference. */
export const rows = (terms: Terms, list: readonly (readonly [string, () => number, number])[]): readonly CheckRow[] =>
  list.map(([claim, value, reference]) => ({ claim, value, reference, ...terms }));
