import type { AtStart } from '../../core/desk/atStart';
import type { RehearsedWalk } from '../../core/desk/rehearsedWalk';
import type { Scenario } from '../../core/scenario/schema';
import type { World } from '../../core/world/world';

export type ToRehearsal =
  | { readonly kind: 'open'; readonly scenario: Scenario; readonly world: World }
  | { readonly kind: 'start' }
  | { readonly kind: 'walk'; readonly seed: number };

export type FromRehearsal =
  /** So far on its way; `usualS` is what such a walk takes at most, as a rule. */
  | { readonly kind: 'walking'; readonly timeS: number; readonly usualS: number }
  | { readonly kind: 'start'; readonly start: AtStart }
  | { readonly kind: 'walked'; readonly walk: RehearsedWalk };
