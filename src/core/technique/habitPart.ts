import type { Moment } from './habit';

/** One part of a habit: its score, or `null` where the run gave no chance to show it, and the moments behind it. */
export type HabitPart = { readonly score: number | null; readonly moments: readonly Moment[] };

export const PART_NOT_SHOWN: HabitPart = { score: null, moments: [] };
