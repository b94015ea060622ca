import type { HeightUnit } from '../../core/elevation/esriGrid';
import type { PackedPiece } from '../../core/elevation/ownGround';
import type { Preview } from '../../core/elevation/preview';
import type { ElevationWindow, GridExtent } from '../../core/elevation/window';
import type { Fault } from '../../core/scenario/faults';

/** What the page is told of a grid; the heights themselves stay in the worker. */
export type GridSaid = {
  readonly extent: GridExtent;
  readonly lowM: number;
  readonly highM: number;
  readonly holes: number;
  readonly remarks: readonly string[];
  readonly preview: Preview;
};

export type ToElevation =
  | { readonly kind: 'read'; readonly file: File; readonly unit: HeightUnit }
  | { readonly kind: 'cut'; readonly piece: ElevationWindow };

export type FromElevation =
  /** The bytes are there: from here on the time counts. */
  | { readonly kind: 'begun' }
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'read'; readonly said: GridSaid }
  /** A text where the piece can't be taken. */
  | { readonly kind: 'cut'; readonly piece: PackedPiece | string }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] };
