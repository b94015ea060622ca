import { toRad } from '../../core/units/angles';
import type { MapPoint } from '../../core/units/frames';

/** What part of the map is shown: the point in the middle and the scale in CSS pixels per metre. */
export type View = { readonly centre: MapPoint; readonly pxPerM: number };
export type SizePx = { readonly width: number; readonly height: number };
export type ScreenPoint = { readonly x: number; readonly y: number };

export const toScreen = (view: View, size: SizePx, at: MapPoint): ScreenPoint => ({
  x: size.width / 2 + (at.eM - view.centre.eM) * view.pxPerM,
  y: size.height / 2 - (at.nM - view.centre.nM) * view.pxPerM,
});

export const toMap = (view: View, size: SizePx, { x, y }: ScreenPoint): MapPoint => ({
  eM: view.centre.eM + (x - size.width / 2) / view.pxPerM,
  nM: view.centre.nM - (y - size.height / 2) / view.pxPerM,
});

/** Unit step on the screen along a bearing. */
export const screenStep = (bearingDeg: number): ScreenPoint => ({ x: Math.sin(toRad(bearingDeg)), y: -Math.cos(toRad(bearingDeg)) });

/** The view after zooming by `factor` with the map under `anchor` staying where it is. */
export function zoomed(view: View, size: SizePx, anchor: ScreenPoint, factor: number, limits: readonly [number, number]): View {
  const pxPerM = Math.min(limits[1], Math.max(limits[0], view.pxPerM * factor));
  const held = toMap(view, size, anchor);
  return {
    pxPerM,
    centre: { eM: held.eM - (anchor.x - size.width / 2) / pxPerM, nM: held.nM + (anchor.y - size.height / 2) / pxPerM },
  };
}

/** The view moved so that its middle stays on the map. */
export const kept = (view: View, sizeM: number): View => ({
  ...view,
  centre: { eM: Math.min(sizeM, Math.max(0, view.centre.eM)), nM: Math.min(sizeM, Math.max(0, view.centre.nM)) },
});

/** The point of the map that is nearest: paper beyond its edge means the edge. */
export const ontoMap = ({ eM, nM }: MapPoint, mapM: number): MapPoint => ({
  eM: Math.min(mapM, Math.max(0, eM)),
  nM: Math.min(mapM, Math.max(0, nM)),
});
