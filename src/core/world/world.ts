import type { MapPoint, SpacePoint } from '../units/frames';
import type { Grid } from './grid';

/** What covers a cell of ground, as the number kept in the cover grid. */
export const COVER = { open: 0, wood: 1, scrub: 2, wet: 3, water: 4, rock: 5, built: 6 } as const;

export type Track = { readonly kind: 'road' | 'track' | 'path'; readonly points: readonly MapPoint[] };
export type Stream = { readonly points: readonly MapPoint[] };
/** A field wall: dry stone, about 1.2 m. It can be walked over slowly. */
export type FieldWall = { readonly points: readonly MapPoint[] };

/** A building on a rectangle; corners run clockwise. */
export type Building = {
  readonly corners: readonly [MapPoint, MapPoint, MapPoint, MapPoint];
  readonly groundM: number;
  readonly heightM: number;
  readonly walls: 'stone' | 'metal';
};

/** A pole or tower: its foot on the ground, its height and the radius of the cylinder that stands for it in the radio model. */
export type Support = { readonly foot: SpacePoint; readonly heightM: number; readonly radiusM: number; readonly kind: 'pole' | 'tower' };

/** One conductor between two neighbouring supports: ends at the insulators, sag at mid-span below the chord. */
export type Span = { readonly from: SpacePoint; readonly to: SpacePoint; readonly sagM: number; readonly conductorRadiusM: number };

export type PowerLine = {
  readonly voltage: 'low' | 'medium' | 'high';
  readonly supports: readonly Support[];
  readonly spans: readonly Span[];
};

/** The generated ground: frozen, never saved, the same bits in every engine for the same scenario. */
export type World = {
  readonly sizeM: number;
  readonly cellM: number;
  /** Height above sea level, metres. */
  readonly groundM: Grid<Float32Array>;
  /** A COVER number per cell. */
  readonly cover: Grid<Uint8Array>;
  readonly tracks: readonly Track[];
  /** 1 in every cell that a road, track or path runs through. */
  readonly trackMask: Grid<Uint8Array>;
  readonly streams: readonly Stream[];
  readonly fieldWalls: readonly FieldWall[];
  readonly buildings: readonly Building[];
  readonly powerLines: readonly PowerLine[];
};
