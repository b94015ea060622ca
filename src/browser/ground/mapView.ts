import { computed, signal } from '@preact/signals';
import { openRun } from '../currentRun';
import { kept, ontoMap, type ScreenPoint, type SizePx, toMap, type View, zoomed } from '../map/screenFrame';
import { hereOnMap } from './beliefNow';

/** How the map is looked at. It follows the walker until it is dragged away. */
export const mapSize = signal<SizePx>({ width: 800, height: 500 });
const looked = signal<View>({ centre: { eM: 0, nM: 0 }, pxPerM: 0.4 });
export const following = signal(true);
/** While a guess pin is being placed the next tap on the map sets it. */
export const placingPin = signal(false);

const MOST_PX_PER_M = 4;
const FIRST_PX_PER_M = 0.42;

export const mapView = computed<View>(() => {
  const at = hereOnMap.value;
  const view = looked.value;
  const here = following.value && at ? { ...view, centre: at } : view;
  return onMap(here, mapSize.value, openRun.value?.exercise.scenario.ground.sizeM ?? 0);
});

/** Paper shown beyond the map's edge at most. */
const EDGE_PX = 40;

/** The view moved so that the window shows map, as far as the map reaches. */
function onMap(view: View, window: SizePx, mapM: number): View {
  const inside = (at: number, windowPx: number) => {
    const half = (windowPx / 2 - EDGE_PX) / view.pxPerM;
    return half * 2 >= mapM ? mapM / 2 : Math.min(mapM - half, Math.max(half, at));
  };
  return { ...view, centre: { eM: inside(view.centre.eM, window.width), nM: inside(view.centre.nM, window.height) } };
}

const sizeM = (): number => openRun.peek()?.exercise.scenario.ground.sizeM ?? 3_000;
const limits = (): readonly [number, number] => [Math.min(mapSize.peek().width, mapSize.peek().height) / sizeM() / 1.4, MOST_PX_PER_M];

export function lookFirst(): void {
  const scenario = openRun.peek()?.exercise.scenario;
  if (!scenario) return;
  following.value = true;
  placingPin.value = false;
  looked.value = { centre: { eM: scenario.start.at[0], nM: scenario.start.at[1] }, pxPerM: FIRST_PX_PER_M };
  fillWindow();
}

/** A first look fills the window with map, as long as that keeps some of the country in sight. */
export function fillWindow(): void {
  const { width, height } = mapSize.peek();
  const filling = Math.min(0.8, Math.max(width, height) / (sizeM() + 1));
  if (looked.peek().pxPerM < filling && following.peek()) looked.value = { ...looked.peek(), pxPerM: filling };
}

export function pan(dxPx: number, dyPx: number): void {
  const view = mapView.peek();
  following.value = false;
  looked.value = kept({ ...view, centre: { eM: view.centre.eM - dxPx / view.pxPerM, nM: view.centre.nM + dyPx / view.pxPerM } }, sizeM());
}

/** Zooms about a point of the window; about the walker while the map follows. */
export function zoom(factor: number, anchor?: ScreenPoint): void {
  const size = mapSize.peek();
  const middle = { x: size.width / 2, y: size.height / 2 };
  looked.value = kept(zoomed(mapView.peek(), size, following.peek() || !anchor ? middle : anchor, factor, limits()), sizeM());
}

export function centreOnMe(): void {
  following.value = true;
}

/** The place under a point of the window, on the map: a run keeps no places beyond it. */
export const pointAt = (at: ScreenPoint) => ontoMap(toMap(mapView.peek(), mapSize.peek(), at), sizeM());
