import type { Deed } from '../../core/run/intervention';
import type { Pulse } from '../../core/run/pulse';
import type { RunState } from '../../core/run/state';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';

/** Windows of this program on one machine hear each other by this name; nothing of it leaves the machine. */
export const CHANNEL = 'faintward instructor';

/** A window that hears nothing of the other for so long takes it for closed. */
export const GONE_AFTER_MS = 6_000;
/** The instructor's window says so often that it is there; a run tells so often how it stands. */
export const WATCHES_EVERY_MS = 1_500;
export const TELLS_EVERY_MS = 250;

/** What an instructor's window says to the runs. */
export type ToRun =
  /** It is there, looks at this run or at none yet, and knows these runs' ground. */
  | { readonly to: 'run'; readonly kind: 'watching'; readonly run: string | null; readonly known: readonly string[] }
  | { readonly to: 'run'; readonly kind: 'deed'; readonly run: string; readonly deed: Deed };

/** What a run says to the instructor's window. */
export type ToInstructor =
  /** All that does not change, and the way so far. */
  | {
      readonly to: 'instructor';
      readonly kind: 'run';
      readonly run: string;
      readonly scenario: Scenario;
      readonly name: string;
      readonly track: readonly MapPoint[];
    }
  | {
      readonly to: 'instructor';
      readonly kind: 'now';
      readonly run: string;
      readonly state: RunState;
      readonly rests: boolean;
      /** The last pulse of each tag, with its truth. */
      readonly pulses: readonly Pulse[];
    }
  | { readonly to: 'instructor'; readonly kind: 'gone'; readonly run: string };
