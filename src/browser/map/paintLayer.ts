import { between, type Palette } from '../design/palette';
import type { LayerKind } from '../workers/surveyMessages';
import { areaPath } from './landPaths';
import type { LayerPicture } from './layerPicture';
import { LAYER_LEVELS } from './layerWords';
import { coverOutlines, levelOutlines } from './outlines';
import type { SizePx, View } from './screenFrame';

/** A layer ready to be painted: areas in metres east and south of the north-west corner, from the lowest level up. */
export type LayerPaths = { readonly what: LayerKind; readonly areas: readonly Path2D[]; readonly sizeM: number };

export function layerPaths(what: LayerKind, { side, values }: LayerPicture, sizeM: number): LayerPaths {
  const grid = { columns: side, rows: side, cellM: sizeM / side };
  if (what === 'sight') {
    const seen = { ...grid, values: Uint8Array.from(values, (value) => (value > 0.5 ? 1 : 0)) };
    return { what, areas: [areaPath(coverOutlines(seen, [1], 1))], sizeM };
  }
  // Where nothing is in view the loudest side is chance from step to step: the picture shows what is usual round a place.
  const shown = what === 'apparent-bearing-error' ? middleOfNeighbours(values, side) : values;
  return { what, areas: levelOutlines({ ...grid, values: shown }, LAYER_LEVELS[what]).map(areaPath), sizeM };
}

/** Each value the median of itself and its eight neighbours. */
function middleOfNeighbours(values: Float32Array, side: number): Float32Array {
  return values.map((_, cell) => {
    const [row, column] = [Math.floor(cell / side), cell % side];
    const around: number[] = [];
    for (let r = Math.max(0, row - 1); r <= Math.min(side - 1, row + 1); r++)
      for (let c = Math.max(0, column - 1); c <= Math.min(side - 1, column + 1); c++) around.push(values[r * side + c]!);
    return around.sort((a, b) => a - b)[around.length >> 1]!;
  });
}

/** The colour of a band: what is heard in the colour of sound, what is so in that of truth, deeper from band to band. */
export function bandColour(what: LayerKind, band: number, palette: Palette): string {
  const deep = what === 'loudness' ? palette.sound : what === 'openness' ? palette.ink : palette.truth;
  const bands = what === 'sight' ? 1 : LAYER_LEVELS[what].length;
  return between(palette.open, deep, 0.2 + (0.8 * (band + 1)) / bands);
}

/** Bands over the land: each edge is drawn as a line, so that they can be counted without colour. */
export function paintLayer(
  context: CanvasRenderingContext2D,
  paths: LayerPaths,
  view: View,
  size: SizePx,
  dpr: number,
  palette: Palette,
): void {
  const scale = view.pxPerM * dpr;
  const left = size.width / 2 - view.centre.eM * view.pxPerM;
  const top = size.height / 2 - (paths.sizeM - view.centre.nM) * view.pxPerM;
  context.save();
  context.setTransform(scale, 0, 0, scale, left * dpr, top * dpr);
  context.beginPath();
  context.rect(0, 0, paths.sizeM, paths.sizeM);
  context.clip();
  if (paths.what === 'sight') paintSight(context, paths, view.pxPerM, palette);
  else paintBands(context, paths, view.pxPerM, palette);
  context.restore();
}

function paintBands(context: CanvasRenderingContext2D, { what, areas }: LayerPaths, pxPerM: number, palette: Palette): void {
  const heard = what === 'loudness';
  areas.forEach((area, band) => {
    context.globalAlpha = 0.3;
    context.fillStyle = bandColour(what, band, palette);
    context.fill(area, 'evenodd');
    context.globalAlpha = 0.75;
    context.strokeStyle = bandColour(what, areas.length - 1, palette);
    context.lineWidth = (band === 0 && heard ? 2 : 0.8) / pxPerM;
    context.stroke(area);
  });
  context.globalAlpha = 1;
}

/** What is out of view lies under a veil of paper; the edge of the view is a dashed line. */
function paintSight(context: CanvasRenderingContext2D, { areas, sizeM }: LayerPaths, pxPerM: number, palette: Palette): void {
  const seen = areas[0]!;
  const hidden = new Path2D();
  hidden.rect(0, 0, sizeM, sizeM);
  hidden.addPath(seen);
  context.globalAlpha = 0.62;
  context.fillStyle = palette.paper;
  context.fill(hidden, 'evenodd');
  context.globalAlpha = 1;
  context.strokeStyle = palette.truth;
  context.lineWidth = 1.8 / pxPerM;
  context.setLineDash([6 / pxPerM, 4 / pxPerM]);
  context.stroke(seen);
  context.setLineDash([]);
}
