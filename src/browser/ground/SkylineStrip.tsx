import { effect, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { antennaHeightM, type RunState } from '../../core/run/state';
import { distanceM } from '../../core/units/frames';
import { type Skyline, skylineLayers } from '../../core/world/skyline';
import { holdNow, openRun, runState } from '../currentRun';
import { currentPalette } from '../design/palette';
import { canvasesRestored, watchCanvas } from '../map/restoredCanvases';
import type { SizePx } from '../map/screenFrame';
import { settings } from '../storage/settings';
import { readDeg } from './measures';
import { paintSkyline } from './paintSkyline';
import { exaggerationFor, pxPerDegFor } from './skylineView';
import { bearingText } from './words';

/** Steps after which the view is looked at anew. */
const ANEW_M = 4;

/** What the eye sees along the antenna. It slides as the antenna turns and changes as one walks. */
export function SkylineStrip() {
  const strip = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const exaggeration = useSignal(1);
  useEffect(() => {
    const frame = strip.current!;
    const size = { width: frame.clientWidth, height: frame.clientHeight };
    const look = lookout();
    let asked = 0;
    const paint = () => {
      asked = 0;
      const state = runState.peek();
      if (!state || !canvas.current) return;
      exaggeration.value = paintStrip(canvas.current, look(state), state, size);
    };
    const ask = () => {
      if (asked === 0) asked = requestAnimationFrame(paint);
    };
    const seen = new ResizeObserver(() => {
      size.width = frame.clientWidth;
      size.height = frame.clientHeight;
      ask();
    });
    seen.observe(frame);
    const stop = effect(() => {
      void [holdNow.value, runState.value?.at, settings.value.palette, canvasesRestored.value];
      ask();
    });
    return () => {
      stop();
      seen.disconnect();
      cancelAnimationFrame(asked);
    };
  }, []);
  return (
    <div ref={strip} class="skyline" role="img" aria-label={`View along the antenna, ${bearingText(holdNow.value?.headingDeg ?? 0)}`}>
      <canvas ref={canvas} />
      <span class="skyline-note number">heights × {exaggeration.value}</span>
    </div>
  );
}

/** The view from where one stands, kept until one has walked on. */
function lookout(): (state: RunState) => Skyline {
  let seen: { readonly from: RunState; readonly skyline: Skyline } | null = null;
  return (state) => {
    if (!seen || distanceM(seen.from.at, state.at) > ANEW_M || antennaHeightM(seen.from.hold) !== antennaHeightM(state.hold)) {
      // The eye is a hand's breadth lower than the antenna.
      seen = { from: state, skyline: skylineLayers(openRun.peek()!.exercise.world, state.at, antennaHeightM(state.hold) - 0.1) };
    }
    return seen.skyline;
  };
}

function paintStrip(canvas: HTMLCanvasElement, skyline: Skyline, state: RunState, size: SizePx): number {
  const dpr = Math.min(3, window.devicePixelRatio || 1);
  const [width, height] = [Math.round(size.width * dpr), Math.round(size.height * dpr)];
  if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height];
  watchCanvas(canvas);
  const context = canvas.getContext('2d', { alpha: false })!;
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
  const footPx = 24;
  const horizonY = (size.height - footPx) * 0.7;
  const pxPerDeg = pxPerDegFor(size.width);
  const exaggeration = exaggerationFor(highest(skyline), pxPerDeg, horizonY - 16);
  const compass = openRun.peek()!.exercise.scenario.aids.compass;
  const view = { headingDeg: state.hold.headingDeg, pxPerDeg, horizonY, exaggeration, size, footPx };
  paintSkyline(context, skyline, view, currentPalette(), compass ? readDeg : null);
  return exaggeration;
}

/** Highest slope that land past the first few steps shows: what is right beside one may stand out of the strip. */
function highest(skyline: Skyline): number {
  let slope = 0;
  for (const layer of skyline.layers.slice(1)) for (const each of layer.slope) if (each > slope) slope = each;
  return slope;
}
