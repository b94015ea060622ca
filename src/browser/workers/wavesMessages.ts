import type { RadialRequest, RadialResult } from '../../core/radio/radial';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';
import type { World } from '../../core/world/world';

export type ToWaves =
  | { readonly kind: 'open'; readonly scenario: Scenario; readonly world: World }
  /** All that a first pulse at a place needs. */
  | {
      readonly kind: 'light';
      readonly ask: number;
      readonly tag: number;
      readonly tagAt: MapPoint;
      readonly at: MapPoint;
      readonly heightM: number;
    }
  /** Single radials, ahead of the walker. */
  | {
      readonly kind: 'radials';
      readonly ask: number;
      readonly tag: number;
      readonly tagAt: MapPoint;
      readonly requests: readonly RadialRequest[];
    };

export type FromWaves = { readonly ask: number; readonly tag: number; readonly tagAt: MapPoint; readonly results: readonly RadialResult[] };
