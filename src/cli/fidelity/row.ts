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
