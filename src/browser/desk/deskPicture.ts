import { effect, signal } from '@preact/signals';
import { movedPlace } from '../../core/desk/places';
import { setDown } from '../../core/desk/setDown';
import type { MapPoint } from '../../core/units/frames';
import { currentPalette } from '../design/palette';
import { easelOf } from '../map/brush';
import type { LandPainter } from '../map/landPainter';
import { clearedContextOf, contextOf, inNextFrame, landOf } from '../map/mapCanvases';
import { mapGestures } from '../map/mapGestures';
import { bringIntoView, mapLook, panLook, zoomLook } from '../map/mapLook';
import { type LayerPaths, layerPaths, paintLayer } from '../map/paintLayer';
import { canvasesRestored } from '../map/restoredCanvases';
import { type ScreenPoint, type SizePx, toMap, toScreen } from '../map/screenFrame';
import { settings } from '../storage/settings';
import type { Land } from '../workers/openLand';
import { choose, chosen, chosenPath, draft, edit, inHand, land, lookAt, panel, places } from './deskState';
import { SET_DOWN_WORDS } from './deskWords';
import { paintDesk } from './paintDesk';
import { paintListener } from './paintListener';
import { paintMisleading } from './paintMisleading';
import { verdict } from './rehearsals';
import { heardHere, layer, layerPicture, listenAt, listening } from './truth';

export type DeskPicture = {
  readonly whole: () => void;
  readonly zoom: (factor: number) => void;
  /** The place in the middle of the map. */
  readonly middle: () => MapPoint;
  readonly pan: (dxPx: number, dyPx: number) => void;
  /** Sets down what is in hand in the middle of the map. */
  readonly setDownHere: () => void;
  readonly close: () => void;
};
type Elements = { readonly frame: HTMLElement; readonly ground: HTMLCanvasElement; readonly above: HTMLCanvasElement };

/** As far from a handle a finger still takes it. */
const NEAR_PX = 24;
const RIM = 0.94;

/** The map of the desk at work on its two canvases: the land below, what was set down above. */
export function openDeskPicture({ frame, ground, above }: Elements): DeskPicture {
  const dpr = Math.min(3, window.devicePixelRatio || 1);
  const size = signal<SizePx>({ width: 0, height: 0 });
  const sizeM = () => draft.peek()?.ground.sizeM ?? 1_000;
  const painter = painterOf(dpr);
  const layerNow = layerOf();
  const whole = () => {
    const { width, height } = size.peek();
    const m = sizeM();
    mapLook.value = { centre: { eM: m / 2, nM: m / 2 }, pxPerM: (RIM * Math.min(width, height)) / m };
  };
  const paintGround = () => {
    const context = contextOf(ground, size.peek(), dpr);
    painter()?.(context, mapLook.peek(), size.peek(), dpr);
    const paths = layerNow(sizeM());
    if (paths) paintLayer(context, paths, mapLook.peek(), size.peek(), dpr, currentPalette());
  };
  const soon = inNextFrame((landToo) => {
    const scenario = draft.peek();
    if (size.peek().width === 0 || !scenario) return;
    if (landToo) paintGround();
    const context = clearedContextOf(above, size.peek(), dpr);
    const easel = easelOf(context, currentPalette(), mapLook.peek(), size.peek(), dpr);
    if (listening.peek() && listenAt.peek()) paintListener(easel, listenAt.peek()!, heardHere.peek());
    if (panel.peek() === 'rehearse' && verdict.peek()) paintMisleading(easel, verdict.peek()!.places);
    paintDesk(easel, { scenario, places: places.peek(), chosen: chosen.peek(), aiming: inHand.peek() !== null });
  });
  const seen = new ResizeObserver(() => {
    const first = size.peek().width === 0;
    size.value = { width: frame.clientWidth, height: frame.clientHeight };
    if (first) whole();
  });
  seen.observe(frame);
  void document.fonts.ready.then(() => soon.ask(true));
  const mapPoint = (at: ScreenPoint): MapPoint => toMap(mapLook.peek(), size.peek(), at);
  const put = (at: ScreenPoint) => {
    const kind = inHand.peek();
    if (!kind) return;
    const { eM, nM } = mapPoint(at);
    let path = '';
    edit(`set down ${SET_DOWN_WORDS[kind].toLowerCase()}`, (scenario) => {
      const done = setDown(scenario, kind, [eM, nM]);
      path = done.path;
      return done.scenario;
    });
    inHand.value = null;
    if (path) choose(path);
  };
  const hover = (event: PointerEvent) => {
    if (!listening.peek() || event.pointerType !== 'mouse' || event.buttons !== 0) return;
    const box = frame.getBoundingClientRect();
    listenAt.value = mapPoint({ x: event.clientX - box.left, y: event.clientY - box.top });
  };
  frame.addEventListener('pointermove', hover);
  let lastSizeM = 0;
  const stops = [
    soon.stop,
    () => frame.removeEventListener('pointermove', hover),
    () => seen.disconnect(),
    effect(() => {
      void [mapLook.value, size.value, land.value, layerPicture.value, settings.value.palette, canvasesRestored.value];
      soon.ask(true);
    }),
    effect(() => {
      void [draft.value, chosenPath.value, inHand.value, panel.value, verdict.value, listenAt.value, heardHere.value];
      soon.ask(false);
    }),
    effect(() => {
      const m = draft.value?.ground.sizeM ?? 0;
      if (m === lastSizeM || size.value.width === 0) return;
      lastSizeM = m;
      whole();
    }),
    effect(() => {
      if (lookAt.value) bringIntoView(size.peek(), sizeM(), lookAt.value);
    }),
    mapGestures(frame, {
      pan: (dx, dy) => panLook(sizeM(), dx, dy),
      zoom: (factor, anchor) => zoomLook(size.peek(), sizeM(), factor, anchor),
      tapped: (at) => {
        if (inHand.peek()) put(at);
        else if (listening.peek()) listenAt.value = mapPoint(at);
        else {
          const near = nearest(at, size.peek());
          if (near) choose(near);
          else chosenPath.value = null;
        }
      },
      grab: (at) => {
        const path = inHand.peek() || listening.peek() ? null : nearest(at, size.peek());
        if (!path) return null;
        const joins = `carry ${path} ${performance.now()}`;
        return (to) => {
          const { eM, nM } = mapPoint(to);
          if (chosenPath.peek() !== path) chosenPath.value = path;
          edit(`move ${nameOf(path)}`, (scenario) => movedPlace(scenario, path, [eM, nM]), joins);
        };
      },
    }),
  ];
  return {
    whole,
    middle: () => mapPoint({ x: size.peek().width / 2, y: size.peek().height / 2 }),
    zoom: (factor) => zoomLook(size.peek(), sizeM(), factor),
    pan: (dx, dy) => panLook(sizeM(), dx, dy),
    setDownHere: () => put({ x: size.peek().width / 2, y: size.peek().height / 2 }),
    close: () => {
      for (const stop of stops) stop();
    },
  };
}

/** The painter of the land that is there now. */
function painterOf(dpr: number): () => LandPainter | null {
  let made: { readonly of: Land; readonly painter: () => LandPainter } | null = null;
  return () => {
    const now = land.peek();
    if (!now) return null;
    if (made?.of !== now) made = { of: now, painter: landOf(now.world, now.land, dpr) };
    return made.painter();
  };
}

/** The areas of the layer of now, worked out once for each picture of it. */
function layerOf(): (sizeM: number) => LayerPaths | null {
  let made: { readonly of: object; readonly paths: LayerPaths } | null = null;
  return (sizeM) => {
    const [what, picture] = [layer.peek(), layerPicture.peek()];
    if (!picture || what === 'none') return null;
    if (made?.of !== picture) made = { of: picture, paths: layerPaths(what, picture, sizeM) };
    return made.paths;
  };
}

/** The thing under a finger. */
function nearest({ x, y }: ScreenPoint, size: SizePx): string | null {
  const near = places
    .peek()
    .map(({ path, at: [eM, nM] }) => {
      const at = toScreen(mapLook.peek(), size, { eM, nM });
      return { path, px: Math.hypot(at.x - x, at.y - y) };
    })
    .sort((a, b) => a.px - b.px)[0];
  return near && near.px <= NEAR_PX ? near.path : null;
}

const nameOf = (path: string): string => places.peek().find((place) => place.path === path)?.name ?? 'it';
