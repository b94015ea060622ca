import type { LayerKind } from '../workers/surveyMessages';

export type LayerId = 'none' | LayerKind;
/** In the order in which they are offered. */
export const LAYER_IDS: readonly LayerId[] = ['none', 'sight', 'loudness', 'excess', 'openness', 'apparent-bearing-error'];

/** What a layer shows, and how far it is worked out. */
export type LayerPicture = { readonly side: number; readonly values: Float32Array; readonly share: number; readonly fault?: string };

/** Gain less attenuation at which loudness is surveyed. */
export const LAYER_GAINS_DB = [0, 15, 30, 45] as const;

/** Points along a side. Sight over the ground is quick to work out: its edge is looked at closer. */
export const LAYER_SIDES: Readonly<Record<LayerKind, number>> = {
  sight: 152,
  openness: 96,
  loudness: 72,
  excess: 72,
  'apparent-bearing-error': 72,
};
