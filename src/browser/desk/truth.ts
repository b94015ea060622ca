import { computed, effect, signal } from '@preact/signals';
import type { HeardHere } from '../../core/desk/hearHere';
import type { MapPoint } from '../../core/units/frames';
import { LAYER_SIDES, type LayerId, type LayerPicture } from '../map/layerPicture';
import { openListener } from '../workers/openListener';
import { openSurvey } from '../workers/openSurvey';
import { chosenPath, land, sound } from './deskState';

/** What of the truth lies over the land. */
export const layer = signal<LayerId>('none');
export const layerGainDb = signal<number>(15);
export const layerPicture = signal<LayerPicture | null>(null);
export const layersOpen = signal(false);

/** Somebody stands on the map and listens: the ring and the waves there are shown. */
export const listening = signal(false);
export const listenAt = signal<MapPoint | null>(null);
export const listenGainDb = signal(30);
export const heardHere = signal<HeardHere | null>(null);
/** `null`: the antenna is on the loudest heading. */
export const listenHeadingDeg = signal<number | null>(null);

/** The tag that all this is of: the one that is chosen on the map, else the first. */
export const truthTag = computed(() => {
  const index = Number(/^tags\.(\d+)/.exec(chosenPath.value ?? '')?.[1] ?? 0);
  return index < (sound.value?.tags.length ?? 0) ? index : 0;
});

/** What the radio depends on: titles, texts and limits do not ask for another survey. */
const aired = computed(() => {
  const scenario = sound.value;
  const ground = land.value;
  if (!scenario || !ground) return null;
  return {
    key: JSON.stringify([scenario.seed, scenario.ground, scenario.radio, scenario.tags, scenario.kit]),
    scenario,
    world: ground.world,
  };
});
const airedKey = computed(() => aired.value?.key ?? null);

/** Surveys and listens anew whenever the exercise changes, as long as either is wanted. @returns stops */
export function tendTruth(): () => void {
  const stops = [tendLayer(), tendListening()];
  return () => {
    for (const stop of stops) stop();
    heardHere.value = null;
    listening.value = false;
  };
}

function tendLayer(): () => void {
  return effect(() => {
    const [what, tag, gainDb] = [layer.value, truthTag.value, layerGainDb.value];
    void [airedKey.value, land.value];
    layerPicture.value = null;
    const open = aired.peek();
    if (what === 'none' || !open) return;
    const survey = openSurvey(open.scenario, open.world);
    const side = LAYER_SIDES[what];
    survey.ask(what, side, { tag, timeS: 0, gainDb, attenuatorDb: 0 }, ({ ask: _, ...come }) => {
      layerPicture.value = { side, ...come };
    });
    return survey.close;
  });
}

function tendListening(): () => void {
  return effect(() => {
    void [airedKey.value, land.value];
    const open = aired.peek();
    if (!listening.value || !open) return;
    heardHere.value = null;
    const listener = openListener(open.scenario, open.world, (heard) => {
      heardHere.value = heard;
    });
    const stop = effect(() => {
      const at = listenAt.value;
      const net = listenGainDb.value;
      const attenuatorDb = net < 0 ? 30 : 0;
      if (at) listener.hear(at, { tag: truthTag.value, gainDb: net + attenuatorDb, attenuatorDb });
    });
    return () => {
      stop();
      listener.close();
    };
  });
}
