/** One step that can be undone or done again: what was there, and in words what was done. */
export type HistoryStep<T> = { readonly value: T; readonly deed: string };

type Chain<T> = { readonly step: HistoryStep<T>; readonly below: Chain<T> } | null;

/** A value with all it has been and all that was undone, without limit. Values are kept as they are, so they must not be changed. */
export type History<T> = {
  readonly now: T;
  /** What the value was, newest first, each with the deed that ended it. */
  readonly past: Chain<T>;
  /** What was undone, nearest first, each with the deed that leads there. */
  readonly future: Chain<T>;
  /** Further changes of this one thing belong to the last step: a slider that is still being drawn. */
  readonly joins: string | null;
};

export const historyOf = <T>(now: T): History<T> => ({ now, past: null, future: null, joins: null });

/** The value changed by a deed. The same value is no step; with the `joins` of the last step it replaces what that step led to. */
export function changed<T>(history: History<T>, value: T, deed: string, joins: string | null = null): History<T> {
  if (value === history.now) return history;
  if (joins !== null && joins === history.joins) return { ...history, now: value, future: null };
  return { now: value, past: { step: { value: history.now, deed }, below: history.past }, future: null, joins };
}

/** Nothing joins the last step any more. */
export const settled = <T>(history: History<T>): History<T> => (history.joins === null ? history : { ...history, joins: null });

export function undone<T>({ now, past, future }: History<T>): History<T> {
  if (!past) return { now, past, future, joins: null };
  const { value, deed } = past.step;
  return { now: value, past: past.below, future: { step: { value: now, deed }, below: future }, joins: null };
}

export function redone<T>({ now, past, future }: History<T>): History<T> {
  if (!future) return { now, past, future, joins: null };
  const { value, deed } = future.step;
  return { now: value, past: { step: { value: now, deed }, below: past }, future: future.below, joins: null };
}

/** The deed that undo takes back, and the one that redo does again; `null` for none. */
export const nextDeeds = <T>({ past, future }: History<T>): { readonly undo: string | null; readonly redo: string | null } => ({
  undo: past?.step.deed ?? null,
  redo: future?.step.deed ?? null,
});

/** A history as lists, oldest step of the past first: chains go too deep for what copies values between tabs and shelves. */
export type KeptHistory<T> = {
  readonly now: T;
  readonly past: readonly HistoryStep<T>[];
  readonly future: readonly HistoryStep<T>[];
};

export const keptHistory = <T>({ now, past, future }: History<T>): KeptHistory<T> => ({
  now,
  past: listOf(past).reverse(),
  future: listOf(future),
});

export const historyFrom = <T>({ now, past, future }: KeptHistory<T>): History<T> => ({
  now,
  past: past.reduce<Chain<T>>((below, step) => ({ step, below }), null),
  future: future.reduceRight<Chain<T>>((below, step) => ({ step, below }), null),
  joins: null,
});

function listOf<T>(chain: Chain<T>): HistoryStep<T>[] {
  const steps: HistoryStep<T>[] = [];
  for (let at = chain; at; at = at.below) steps.push(at.step);
  return steps;
}
