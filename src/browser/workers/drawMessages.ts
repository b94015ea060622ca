import type { Scenario } from '../../core/scenario/schema';

export type ToDraw = { readonly seed: number; readonly lesson: Scenario['lesson']; readonly level: number };

export type FromDraw =
  /** The steady walker is on its way in the exercise that was drawn. */
  | { readonly kind: 'rehearsing'; readonly title: string; readonly walkedM: number }
  | { readonly kind: 'drawn'; readonly scenario: Scenario | null };
