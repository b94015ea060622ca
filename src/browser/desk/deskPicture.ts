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
import { type ScreenPoint, type SizePx, toMap, toScreen } from '../map/screenFrame';
import { settings } from '../storage/settings';
import type { Land } from '../workers/openLand';
import { choose, chosen, chosenPath, draft, edit, inHand, land, lookedFor, places } from './deskState';
import { SET_DOWN_WORDS } from './deskWords';
import { paintDesk } from './paintDesk';

export type DeskPicture = {
  readonly whole: () => void;
  readonly zoom: (factor: number) => void;
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
  const whole = () => {
    const { width, height } = size.peek();
    const m = sizeM();
    mapLook.value = { centre: { eM: m / 2, nM: m / 2 }, pxPerM: (RIM * Math.min(width, height)) / m };
  };
  const soon = inNextFrame((landToo) => {
    const scenario = draft.peek();
    if (size.peek().width === 0 || !scenario) return;
    if (landToo) painter()?.(contextOf(ground, size.peek(), dpr), mapLook.peek(), size.peek(), dpr);
    const context = clearedContextOf(above, size.peek(), dpr);
    const easel = easelOf(context, currentPalette(), mapLook.peek(), size.peek(), dpr);
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
  let lastSizeM = 0;
  const stops = [
    soon.stop,
    () => seen.disconnect(),
    effect(() => {
      void [mapLook.value, size.value, land.value, settings.value.palette];
      soon.ask(true);
    }),
    effect(() => {
      void [draft.value, chosenPath.value, inHand.value];
      soon.ask(false);
    }),
    effect(() => {
      const m = draft.value?.ground.sizeM ?? 0;
      if (m === lastSizeM || size.value.width === 0) return;
      lastSizeM = m;
      whole();
    }),
    effect(() => {
      const at = places.peek().find(({ path }) => path === lookedFor.value)?.at;
      if (at) bringIntoView(size.peek(), sizeM(), { eM: at[0], nM: at[1] });
    }),
    mapGestures(frame, {
      pan: (dx, dy) => panLook(sizeM(), dx, dy),
      zoom: (factor, anchor) => zoomLook(size.peek(), sizeM(), factor, anchor),
      tapped: (at) => {
        if (inHand.peek()) put(at);
        else {
          const near = nearest(at, size.peek());
          if (near) choose(near);
          else chosenPath.value = null;
        }
      },
      grab: (at) => {
        const path = inHand.peek() ? null : nearest(at, size.peek());
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
