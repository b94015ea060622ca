import { effect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { pennedMarks } from '../../core/run/penned';
import { bearingDeg } from '../../core/units/frames';
import { act, holdNow, legsNow, live, openRun, track } from '../currentRun';
import { currentPalette } from '../design/palette';
import { landPainter } from '../map/landPainter';
import { mapGestures } from '../map/mapGestures';
import { canvasesRestored } from '../map/restoredCanvases';
import { settings } from '../storage/settings';
import { hereOnMap, placeShown, placingMe, sayIAmHere } from './beliefNow';
import { chooseStart, chosenStart, fixNow, placingStart } from './fixNow';
import type { MapPicture } from './mapScene';
import { fillWindow, mapSize, mapView, pan, placingPin, pointAt, zoom } from './mapView';
import { chosenPaceMPerS } from './pace';
import { hatchNow, placingHatch, ruleOut } from './ruleOutNow';

const BEARING_LENGTH_M = 4_000;

/** The map: opens Phaser when it is first shown, tells it what to draw, and turns taps into a walk or a pin. */
export function MapWindowFrame() {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const parent = frame.current!;
    const { exercise, land } = openRun.peek()!;
    const dpr = Math.min(3, Math.max(1, window.devicePixelRatio || 1));
    const measured = () => ({ width: parent.clientWidth, height: parent.clientHeight });
    mapSize.value = measured();
    fillWindow();
    const closing: (() => void)[] = [];
    let closed = false;
    void Promise.all([import('./mapScene'), document.fonts.ready]).then(([{ openMapWindow }]) => {
      if (closed || !openRun.peek()) return;
      let kept = picture();
      // The window may draw once more after the run was left and before it is closed itself.
      const pictureOrLast = () => {
        if (openRun.peek() && live.peek()) kept = picture();
        return kept;
      };
      const palette = currentPalette();
      const map = openMapWindow(parent, landPainter(exercise.world, land, palette, dpr), palette, dpr, pictureOrLast);
      const seen = new ResizeObserver(() => {
        mapSize.value = measured();
        map.resize(mapSize.value);
      });
      seen.observe(parent);
      const lookNow = () => `${settings.value.palette} ${canvasesRestored.value}`;
      let shown = lookNow();
      const stop = effect(() => {
        if (lookNow() === shown) return;
        shown = lookNow();
        // The style sheet takes the new palette up within this turn.
        queueMicrotask(() => map.recolour(currentPalette(), landPainter(exercise.world, land, currentPalette(), dpr)));
      });
      closing.push(stop, () => seen.disconnect(), map.close);
    });
    closing.push(mapGestures(parent, { pan, zoom, tapped }));
    return () => {
      closed = true;
      for (const close of closing) close();
    };
  }, []);
  return <div ref={frame} class="map-window" role="img" aria-label="Map of the ground" />;
}

function tapped(at: { readonly x: number; readonly y: number }): void {
  const point = pointAt(at);
  if (placingStart.peek()) chooseStart(point);
  else if (placingMe.peek()) sayIAmHere(point);
  else if (placingHatch.peek()) ruleOut(point);
  else if (placingPin.peek()) {
    act({ type: 'guess', at: { eM: Math.round(point.eM * 10) / 10, nM: Math.round(point.nM * 10) / 10 } });
    placingPin.value = false;
  } else if (placeShown.peek()) {
    act({ type: 'walkTo', at: { eM: Math.round(point.eM), nM: Math.round(point.nM) }, paceMPerS: chosenPaceMPerS.peek() });
  } else {
    // To stop at the place itself would show where one is.
    const from = hereOnMap.peek();
    if (from) act({ type: 'walk', courseDeg: bearingDeg(from, point), paceMPerS: chosenPaceMPerS.peek() });
  }
}

function picture(): MapPicture {
  const { exercise } = openRun.peek()!;
  const { state } = live.peek()!;
  const shown = exercise.scenario.aids.ownPosition;
  return {
    view: mapView.peek(),
    size: mapSize.peek(),
    marks: {
      walker: shown ? state.at : null,
      hold: holdNow.peek()!,
      goal: legsNow.peek()?.until ?? null,
      track: shown ? track.peek() : [],
      vehicle: shown && !state.vehicle?.aboard ? (state.vehicle?.at ?? null) : null,
      believed: state.belief?.at ?? null,
      notebook: pennedMarks(state.notebook),
      guess: state.guess,
      hatch: hatchNow.peek(),
      fix: fixNow.peek(),
      start: chosenStart.peek(),
      placing: placingPin.peek() || placingStart.peek() || placingMe.peek() || placingHatch.peek(),
      bearingLengthM: BEARING_LENGTH_M,
      gridEveryM: 1_000,
      sizeM: exercise.scenario.ground.sizeM,
    },
  };
}
