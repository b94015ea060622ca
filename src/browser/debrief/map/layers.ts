import { signal } from '@preact/signals';
import type { SurveySetting } from '../../../core/debrief/survey';
import { LAYER_SIDES, type LayerId, type LayerPicture } from '../../map/layerPicture';
import type { Survey } from '../../workers/openSurvey';

export const layer = signal<LayerId>('none');
export const layerGainDb = signal<number>(15);
export const layerPicture = signal<LayerPicture | null>(null);
/** What else lies on the map. */
export const onMap = signal({ waves: false, fix: false, ruledOut: false, steady: true });
export const layersOpen = signal(false);

const kept = new Map<string, LayerPicture>();

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
  const side = LAYER_SIDES[what];
  survey.ask(what, side, { ...at, gainDb, attenuatorDb: 0 }, ({ ask: _, ...come }) => {
    const picture = { side, ...come };
    if (come.share >= 1 && !come.fault) kept.set(key, picture);
    layerPicture.value = picture;
  });
}
