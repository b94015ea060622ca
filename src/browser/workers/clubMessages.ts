import type { Collected } from '../../core/club/collect';
import type { Scenario } from '../../core/scenario/schema';

export type ToClub = { readonly file: File };

/** Faults of `collected` tell the file by its name. `scenario` comes with the first run of each exercise that this worker replays. */
export type FromClub = { readonly collected: Collected; readonly scenario: Scenario | null };
