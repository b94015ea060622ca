import type { Debriefing } from '../../core/debrief/debriefing';
import type { Scenario } from '../../core/scenario/schema';
import type { World } from '../../core/world/world';

export type ToSteady = { readonly scenario: Scenario; readonly world: World };

export type FromSteady =
  /** So far on its way; `usualS` is what such a walk takes at most, as a rule. */
  | { readonly kind: 'walking'; readonly timeS: number; readonly walkedM: number; readonly usualS: number }
  | { readonly kind: 'walked'; readonly debriefing: Debriefing };
