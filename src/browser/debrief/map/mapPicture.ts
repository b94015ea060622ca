import { effect, signal } from '@preact/signals';
import type { Debriefing } from '../../../core/debrief/debriefing';
import { stateAt } from '../../../core/debrief/poses';
import { TICKS_PER_S } from '../../../core/run/state';
import { tagAt } from '../../../core/run/tagMotion';
import type { OpenRun } from '../../currentRun';
import { currentPalette } from '../../design/palette';
import { wavesOf } from '../../finishedRun';
import { easelOf } from '../../map/brush';
import { clearedContextOf, contextOf, inNextFrame, landOf } from '../../map/mapCanvases';
import { mapGestures } from '../../map/mapGestures';
import { bringIntoView, mapLook, panLook, viewOfAll, zoomLook } from '../../map/mapLook';
import { type LayerPaths, layerPaths, paintLayer } from '../../map/paintLayer';
import { canvasesRestored } from '../../map/restoredCanvases';
import { type ScreenPoint, type SizePx, toScreen } from '../../map/screenFrame';
import { settings } from '../../storage/settings';
import { atS, chooseBearing, chosenBearing, chosenMoment } from '../replay';
import { layer, layerPicture, onMap } from './layers';
import { paintRun } from './paintRun';

/** The map of the debrief at work on its two canvases: the land with its layer below, what lies on it above. */
export type MapPicture = {
  readonly whole: () => void;
  readonly zoom: (factor: number) => void;
  readonly repaint: () => void;
  readonly close: () => void;
};

export type MapElements = { readonly frame: HTMLElement; readonly ground: HTMLCanvasElement; readonly above: HTMLCanvasElement };

const NEAR_PX = 22;
/** The words of a chosen moment lie over the map's foot where the map is this wide. */
const WORDS_OVER_FROM_PX = 600;
const WORDS_PX = 210;

/** Land and layer are painted anew only when the look changes; what lies on them whenever the scrubber moves. */
export function openMapPicture(
  { frame, ground, above }: MapElements,
  { exercise, land }: OpenRun,
  debriefing: Debriefing,
  steady: () => Debriefing | null,
): MapPicture {
  const { scenario, world } = exercise;
  const dpr = Math.min(3, window.devicePixelRatio || 1);
  const size = signal<SizePx>({ width: 0, height: 0 });
  const paintLand = landOf(world, land, dpr);
  const pathsOf = layerOf(world.sizeM);

  const whole = () => {
    const places = debriefing.track.flatMap(({ points }) => points);
    const tags = scenario.tags.map((_, i) => tagAt(scenario, i, debriefing.end.tick / TICKS_PER_S));
    mapLook.value = viewOfAll([...places, ...tags], size.peek());
  };
  const paintGround = () => {
    const context = contextOf(ground, size.peek(), dpr);
    paintLand()(context, mapLook.peek(), size.peek(), dpr);
    const paths = pathsOf();
    if (paths) paintLayer(context, paths, mapLook.peek(), size.peek(), dpr, currentPalette());
  };
  const paintAbove = () => {
    const context = clearedContextOf(above, size.peek(), dpr);
    const shown = onMap.peek();
    paintRun(easelOf(context, currentPalette(), mapLook.peek(), size.peek(), dpr), {
      scenario,
      debriefing,
      steady: shown.steady ? steady() : null,
      waves: wavesOf.peek(),
      allWaves: shown.waves,
      showFix: shown.fix,
      showRuledOut: shown.ruledOut,
      atS: atS.peek(),
      stretch: chosenMoment.peek()?.moment ?? null,
      bearing: chosenBearing.peek(),
    });
  };
  const soon = inNextFrame((landToo) => {
    if (size.peek().width === 0) return;
    if (landToo) paintGround();
    paintAbove();
  });
  const seen = new ResizeObserver(() => {
    const first = size.peek().width === 0;
    size.value = { width: frame.clientWidth, height: frame.clientHeight };
    if (first) whole();
  });
  seen.observe(frame);
  void document.fonts.ready.then(() => soon.ask(true));
  const stops = [
    soon.stop,
    () => seen.disconnect(),
    effect(() => {
      void [mapLook.value, size.value, layerPicture.value, settings.value.palette, canvasesRestored.value];
      soon.ask(true);
    }),
    effect(() => {
      void [atS.value, chosenMoment.value, chosenBearing.value, onMap.value, wavesOf.value];
      soon.ask(false);
    }),
    effect(() => {
      const moment = chosenMoment.value?.moment;
      const footPx = size.peek().width >= WORDS_OVER_FROM_PX ? WORDS_PX : 50;
      if (moment) bringIntoView(size.peek(), world.sizeM, stateAt(scenario, debriefing.poses, moment.fromS).at, footPx);
    }),
    effect(() => {
      const row = debriefing.bearings.find(({ number }) => number === chosenBearing.value);
      if (row) bringIntoView(size.peek(), world.sizeM, row.at);
    }),
    mapGestures(frame, {
      withinPage: true,
      pan: (dx, dy) => panLook(world.sizeM, dx, dy),
      zoom: (factor, anchor) => zoomLook(size.peek(), world.sizeM, factor, anchor),
      tapped: (at) => chooseNearest(debriefing, at, size.peek()),
    }),
  ];
  return {
    whole,
    zoom: (factor) => zoomLook(size.peek(), world.sizeM, factor),
    repaint: () => soon.ask(false),
    close: () => {
      for (const stop of stops) stop();
    },
  };
}

/** The areas of the layer of now, worked out once for each picture of it. */
function layerOf(sizeM: number): () => LayerPaths | null {
  let made: { readonly of: object; readonly paths: LayerPaths } | null = null;
  return () => {
    const [what, picture] = [layer.peek(), layerPicture.peek()];
    if (!picture || what === 'none') return null;
    if (made?.of !== picture) made = { of: picture, paths: layerPaths(what, picture, sizeM) };
    return made.paths;
  };
}

function chooseNearest({ bearings }: Debriefing, { x, y }: ScreenPoint, size: SizePx): void {
  const near = bearings
    .map((row) => {
      const place = toScreen(mapLook.peek(), size, row.at);
      return { row, px: Math.hypot(place.x - x, place.y - y) };
    })
    .sort((a, b) => a.px - b.px)[0];
  if (near && near.px <= NEAR_PX) chooseBearing(near.row.number, near.row.atS);
}
