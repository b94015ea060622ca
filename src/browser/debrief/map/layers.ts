import { signal } from '@preact/signals';
import type { SurveySetting } from '../../../core/debrief/survey';
import type { Survey } from '../../workers/openSurvey';
import type { LayerKind } from '../../workers/surveyMessages';

export type LayerId = 'none' | LayerKind;

/** What a layer shows, and how far it is worked out. */
export type LayerPicture = { readonly side: number; readonly values: Float32Array; readonly share: number };

export const layer = signal<LayerId>('none');
/** Gain less attenuation at which loudness is surveyed. */
export const LAYER_GAINS_DB = [0, 15, 30, 45] as const;
export const layerGainDb = signal<number>(15);
export const layerPicture = signal<LayerPicture | null>(null);
/** What else lies on the map. */
export const onMap = signal({ waves: false, fix: false, ruledOut: false, steady: true });
export const layersOpen = signal(false);

const kept = new Map<string, LayerPicture>();
/** Sight over the ground is quick to work out: its edge is looked at closer. */
const SIDES: Readonly<Record<LayerKind, number>> = {
  sight: 152,
  openness: 96,
  loudness: 72,
  excess: 72,
  'apparent-bearing-error': 72,
};

export function beginLayers(): void {
  kept.clear();
  layer.value = 'none';
  layerPicture.value = null;
  layersOpen.value = false;
  onMap.value = { waves: false, fix: false, ruledOut: false, steady: true };
}

/** Asks for what the chosen layer shows, unless it has been worked out before. */
export function askForLayer(survey: Survey, at: Pick<SurveySetting, 'tag' | 'timeS'>): void {
  const what = layer.value;
  const gainDb = layerGainDb.value;
  if (what === 'none') {
    layerPicture.value = null;
    return;
  }
  const key = what === 'loudness' ? `${what}/${gainDb}` : what;
  const known = kept.get(key);
  layerPicture.value = known ?? null;
  if (known) return;
  const side = SIDES[what];
  survey.ask(what, side, { ...at, gainDb, attenuatorDb: 0 }, ({ values, share }) => {
    const picture = { side, values, share };
    if (share >= 1) kept.set(key, picture);
    layerPicture.value = picture;
  });
}
