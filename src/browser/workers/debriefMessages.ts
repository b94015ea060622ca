import type { Debriefing } from '../../core/debrief/debriefing';
import type { WaveArrow } from '../../core/debrief/lossBudget';
import type { Entry } from '../../core/run/actions';
import type { Pulse } from '../../core/run/pulse';
import type { Practice } from '../../core/run/record';
import type { Scenario } from '../../core/scenario/schema';
import type { World } from '../../core/world/world';

/** A run to go through. Where its pulses are known only the poses are lived through again. */
export type ToDebrief = {
  readonly scenario: Scenario;
  readonly world: World;
  readonly practice: Practice | undefined;
  readonly log: readonly Entry[];
  readonly ticks: number;
  readonly thresholdDb: number;
  readonly pulses: readonly Pulse[] | null;
};

export type FromDebrief =
  /** How much of the run has been lived through again, 0 to 1. */
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'debriefing'; readonly debriefing: Debriefing; readonly pulses: readonly Pulse[] }
  /** The waves behind the bearing of a number, one message a bearing. */
  | { readonly kind: 'waves'; readonly number: number; readonly arrows: readonly WaveArrow[] }
  | { readonly kind: 'done' };
