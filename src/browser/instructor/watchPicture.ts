import { effect, signal } from '@preact/signals';
import { type RunState, timeS } from '../../core/run/state';
import { tagAt } from '../../core/run/tagMotion';
import type { Scenario } from '../../core/scenario/schema';
import { stepAlong } from '../../core/units/frames';
import { currentPalette } from '../design/palette';
import { disc, type Easel, easelOf, haloed, line, stepPx, write } from '../map/brush';
import { clearedContextOf, contextOf, inNextFrame, landOf } from '../map/mapCanvases';
import { mapGestures } from '../map/mapGestures';
import { mapLook, panLook, viewOfAll, zoomLook } from '../map/mapLook';
import { paintTag } from '../map/paintTag';
import { canvasesRestored } from '../map/restoredCanvases';
import type { SizePx } from '../map/screenFrame';
import { settings } from '../storage/settings';
import type { Land } from '../workers/openLand';
import { type WatchedRun, watched } from './watched';

export type WatchPicture = { readonly whole: () => void; readonly zoom: (factor: number) => void; readonly close: () => void };
type Elements = { readonly frame: HTMLElement; readonly ground: HTMLCanvasElement; readonly above: HTMLCanvasElement };

/** The map's buttons at its right: nothing that matters stands behind them at first. */
const BUTTONS_PX = 76;

/** The run on its land with the truth of it, as it goes; without the land, on paper. */
export function openWatchPicture({ frame, ground, above }: Elements, scenario: Scenario, land: Land | null): WatchPicture {
  const { sizeM } = scenario.ground;
  const dpr = Math.min(3, window.devicePixelRatio || 1);
  const size = signal<SizePx>({ width: 0, height: 0 });
  /** Somebody has looked closer: from then on the view is theirs. */
  let moved = false;
  const paintLand = land && landOf(land.world, land.land, dpr);
  const whole = () => {
    const run = watched.peek();
    const atS = run?.state ? timeS(run.state) : 0;
    const start = { eM: scenario.start.at[0], nM: scenario.start.at[1] };
    const points = [start, ...scenario.tags.map((_, i) => tagAt(scenario, i, atS)), ...(run?.track ?? [])];
    const { width, height } = size.peek();
    const { centre, pxPerM } = viewOfAll(points, { width: width - BUTTONS_PX, height });
    mapLook.value = { pxPerM, centre: { ...centre, eM: centre.eM + BUTTONS_PX / 2 / pxPerM } };
  };
  const soon = inNextFrame((landToo) => {
    const [run, box] = [watched.peek(), size.peek()];
    if (!run || box.width === 0) return;
    if (landToo && paintLand) paintLand()(contextOf(ground, box, dpr), mapLook.peek(), box, dpr);
    const context = clearedContextOf(above, box, dpr);
    paintRun(easelOf(context, currentPalette(), mapLook.peek(), box, dpr), run);
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
      void watched.value;
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
      tapped: () => {},
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

function paintRun(easel: Easel, { scenario, state, track }: WatchedRun): void {
  const { palette } = easel;
  haloed(easel, track.map(easel.at), { colour: palette.sound, width: 2.6 });
  const atS = state ? timeS(state) : 0;
  if (state) paintNotebook(easel, state);
  scenario.tags.forEach(({ name }, i) => {
    paintTag(easel, name, tagAt(scenario, i, atS));
  });
  if (state) paintWalker(easel, state);
}

const BEARING_M = 700;

function paintNotebook(easel: Easel, { notebook, guess }: RunState): void {
  const { palette } = easel;
  notebook.forEach((mark, i) => {
    if (mark.struckOut) return;
    const from = easel.at(mark.at);
    line(easel, [from, easel.at(stepAlong(mark.at, mark.bearingDeg, BEARING_M))], { colour: palette.ink, width: 1.4 });
    disc(easel, from, 2.6, palette.ink);
    write(easel, stepPx(from, mark.bearingDeg + 180, 14), { text: String(i + 1), colour: palette.ink, align: 'center' });
  });
  if (!guess) return;
  const pin = easel.at(guess);
  disc(easel, pin, 6, palette.paper, { colour: palette.ink, width: 2 });
  write(easel, { x: pin.x + 12, y: pin.y }, { text: 'guess', colour: palette.ink });
}

/** Length of the line that the antenna points along on the map, px. */
const NOSE_PX = 44;

function paintWalker(easel: Easel, { at, hold }: RunState): void {
  const { palette } = easel;
  const spot = easel.at(at);
  haloed(easel, [spot, stepPx(spot, hold.headingDeg, NOSE_PX)], { colour: palette.ink, width: 2.4 });
  disc(easel, spot, 8.5, palette.paper);
  disc(easel, spot, 6.5, palette.sound, { colour: palette.ink, width: 2 });
}
