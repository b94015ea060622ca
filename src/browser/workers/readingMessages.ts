import type { Book } from '../../core/logbook/book';
import type { Recording } from '../../core/run/record';
import type { Fault } from '../../core/scenario/faults';
import type { Scenario } from '../../core/scenario/schema';

/** What a person's own file may be, and what it is read as. */
export type Readable = { readonly scenario: Scenario; readonly run: Recording; readonly book: Book };

export type ToReading = { readonly kind: keyof Readable; readonly file: File };

export type FromReading =
  /** The text is there: from here on the time counts. */
  | { readonly kind: 'begun' }
  | { readonly kind: 'read'; readonly value: Readable[keyof Readable] }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] };
