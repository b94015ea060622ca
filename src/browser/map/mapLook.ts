import { signal } from '@preact/signals';
import type { MapPoint } from '../../core/units/frames';
import { kept, type ScreenPoint, type SizePx, toMap, toScreen, type View, zoomed } from './screenFrame';

/** How a map of finished runs is looked at: all that was walked until somebody looks closer. One such map is open at a time. */
export const mapLook = signal<View>({ centre: { eM: 0, nM: 0 }, pxPerM: 0.3 });

const LIMITS = [0.04, 5] as const;
const RIM_PX = 56;

/** The view that holds all points. */
export function viewOfAll(points: readonly MapPoint[], size: SizePx): View {
  const [west, east] = [Math.min(...points.map(({ eM }) => eM)), Math.max(...points.map(({ eM }) => eM))];
  const [south, north] = [Math.min(...points.map(({ nM }) => nM)), Math.max(...points.map(({ nM }) => nM))];
  const fits = (px: number, m: number) => Math.max(40, px - 2 * RIM_PX) / Math.max(120, m);
  const pxPerM = Math.min(1.4, fits(size.width, east - west), fits(size.height, north - south));
  return { centre: { eM: (west + east) / 2, nM: (south + north) / 2 }, pxPerM };
}

export function zoomLook(
  size: SizePx,
  sizeM: number,
  factor: number,
  anchor: ScreenPoint = { x: size.width / 2, y: size.height / 2 },
): void {
  mapLook.value = kept(zoomed(mapLook.peek(), size, anchor, factor, LIMITS), sizeM);
}

export function panLook(sizeM: number, dxPx: number, dyPx: number): void {
  const { centre, pxPerM } = mapLook.peek();
  mapLook.value = kept({ pxPerM, centre: { eM: centre.eM - dxPx / pxPerM, nM: centre.nM + dyPx / pxPerM } }, sizeM);
}

/** Moves the map so far that a place is well inside the picture, clear of `footPx` at its foot; where it is already, nothing moves. */
export function bringIntoView(size: SizePx, sizeM: number, place: MapPoint, footPx = 50): void {
  const view = mapLook.peek();
  const { x, y } = toScreen(view, size, place);
  if (x >= 50 && x <= size.width - 50 && y >= 50 && y <= size.height - footPx) return;
  const middle = toMap(view, size, { x: size.width / 2, y: size.height / 2 });
  const wanted = toMap(view, size, { x: size.width / 2, y: (size.height - footPx + 50) / 2 });
  const centre = { eM: place.eM, nM: place.nM + middle.nM - wanted.nM };
  mapLook.value = kept({ ...view, centre }, sizeM);
}
