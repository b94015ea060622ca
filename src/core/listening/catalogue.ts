import { backSignal } from './backSignal';
import type { Demonstration } from './demonstration';

/** Every demonstration, in the order in which they are taught. */
export const DEMONSTRATIONS: readonly Demonstration[] = [backSignal];
