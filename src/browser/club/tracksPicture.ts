import { effect, signal } from '@preact/signals';
import { currentPalette } from '../design/palette';
import { easelOf } from '../map/brush';
import { clearedContextOf, contextOf, inNextFrame, landOf } from '../map/mapCanvases';
import { mapGestures } from '../map/mapGestures';
import { mapLook, panLook, viewOfAll, zoomLook } from '../map/mapLook';
import { canvasesRestored } from '../map/restoredCanvases';
import { type SizePx, toScreen } from '../map/screenFrame';
import { settings } from '../storage/settings';
import type { Land } from '../workers/openLand';
import { exerciseNow, scenarios } from './clubTable';
import { paintTracks } from './paintTracks';
import { atS, inFront, pick, walked, wayUntil } from './tracks';

export type TracksPicture = { readonly whole: () => void; readonly zoom: (factor: number) => void; readonly close: () => void };
type Elements = { readonly frame: HTMLElement; readonly ground: HTMLCanvasElement; readonly above: HTMLCanvasElement };

const NEAR_PX = 22;
/** The column of buttons at the map's right: no way and no tag is hidden by it at first. */
const BUTTONS_PX = 76;

/** The ways of one exercise on its land; without the land, on paper. Land is painted anew only when the look changes. */
export function openTracksPicture({ frame, ground, above }: Elements, land: Land | null): TracksPicture {
  const { exercise } = exerciseNow.peek()!;
  const { sizeM } = exercise;
  const dpr = Math.min(3, window.devicePixelRatio || 1);
  const size = signal<SizePx>({ width: 0, height: 0 });
  /** Somebody has looked closer: from then on the view is theirs. */
  let moved = false;
  const paintLand = land && landOf(land.world, land.land, dpr);
  const whole = () => {
    const ways = walked.peek().flatMap(({ track }) => track.map(([, eM, nM]) => ({ eM, nM })));
    const given = [exercise.startAt, ...exercise.tags.map(({ at }) => at)].map(([eM, nM]) => ({ eM, nM }));
    const { width, height } = size.peek();
    const { centre, pxPerM } = viewOfAll([...ways, ...given], { width: width - BUTTONS_PX, height });
    mapLook.value = { pxPerM, centre: { ...centre, eM: centre.eM + BUTTONS_PX / 2 / pxPerM } };
  };
  const soon = inNextFrame((landToo) => {
    if (size.peek().width === 0) return;
    if (landToo && paintLand) paintLand()(contextOf(ground, size.peek(), dpr), mapLook.peek(), size.peek(), dpr);
    const context = clearedContextOf(above, size.peek(), dpr);
    paintTracks(easelOf(context, currentPalette(), mapLook.peek(), size.peek(), dpr), {
      exercise,
      scenario: scenarios.peek().get(exercise.digest) ?? null,
      rows: walked.peek(),
      inFront: inFront.peek(),
      atS: atS.peek(),
    });
  });
  const seen = new ResizeObserver(() => {
    size.value = { width: frame.clientWidth, height: frame.clientHeight };
    if (!moved) whole();
  });
  seen.observe(frame);
  void document.fonts.ready.then(() => soon.ask(true));
  const stops = [
    soon.stop,
    () => seen.disconnect(),
    effect(() => {
      void [mapLook.value, size.value, settings.value.palette, canvasesRestored.value];
      soon.ask(true);
    }),
    effect(() => {
      void walked.value;
      if (!moved && size.peek().width > 0) whole();
    }),
    effect(() => {
      void [atS.value, inFront.value, walked.value];
      soon.ask(false);
    }),
    mapGestures(frame, {
      withinPage: true,
      pan: (dx, dy) => {
        moved = true;
        panLook(sizeM, dx, dy);
      },
      zoom: (factor, anchor) => {
        moved = true;
        zoomLook(size.peek(), sizeM, factor, anchor);
      },
      tapped: ({ x, y }) => {
        const near = walked
          .peek()
          .map(({ run, track }) => {
            const at = toScreen(mapLook.peek(), size.peek(), wayUntil(track, atS.peek()).way.at(-1)!);
            return { run, px: Math.hypot(at.x - x, at.y - y) };
          })
          .sort((a, b) => a.px - b.px)[0];
        if (near && near.px <= NEAR_PX) pick(near.run);
      },
    }),
  ];
  return {
    whole() {
      moved = false;
      whole();
    },
    zoom(factor) {
      moved = true;
      zoomLook(size.peek(), sizeM, factor);
    },
    close: () => {
      for (const stop of stops) stop();
    },
  };
}
