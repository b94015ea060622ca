import { contours } from 'd3-contour';
import type { Grid } from '../../core/world/grid';

/** A line or ring in metres, east then south from the map's north-west corner, as canvases count: x, y, x, y … */
export type Outline = { readonly xy: Float32Array; readonly closed: boolean };
export type ContourLine = { readonly heightM: number; readonly index: boolean; readonly lines: readonly Outline[] };

/** Contour lines at every `intervalM`; each fifth is an index contour. The map's edge is not part of any line. */
export function contourLines(heights: Grid<Float32Array>, intervalM: number): readonly ContourLine[] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of heights.values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  const first = Math.floor(least / intervalM) + 1;
  const count = Math.max(0, Math.ceil(most / intervalM) - first);
  const levels = Array.from({ length: count }, (_, i) => (first + i) * intervalM);
  const draw = contours().size([heights.columns, heights.rows]);
  return levels.map((heightM) => ({
    heightM,
    index: Math.round(heightM / intervalM) % 5 === 0,
    lines: rings(draw.contour(heights.values as unknown as number[], heightM).coordinates).flatMap((ring) => withoutEdge(ring, heights)),
  }));
}

/** Outlines of the cells whose cover is one of `kinds`, softened so that no cell corner is seen. */
export function coverOutlines(cover: Grid<Uint8Array>, kinds: readonly number[], softenings = 2): readonly Outline[] {
  let mask: Grid<Float32Array> = { ...cover, values: Float32Array.from(cover.values, (kind) => (kinds.includes(kind) ? 1 : 0)) };
  for (let i = 0; i < softenings; i++) mask = softened(mask);
  const shape = contours()
    .size([mask.columns, mask.rows])
    .contour(mask.values as unknown as number[], 0.5);
  return rings(shape.coordinates).map((ring) => ({ xy: inMetres(ring, mask), closed: true }));
}

/** Outlines of where a quantity is at or above each level. Cells without a value (NaN) are below every level. */
export function levelOutlines(quantity: Grid<Float32Array>, levels: readonly number[]): readonly (readonly Outline[])[] {
  const values = quantity.values.map((value) => (Number.isNaN(value) ? BELOW_ALL : value)) as unknown as number[];
  const draw = contours().size([quantity.columns, quantity.rows]);
  return levels.map((level) =>
    rings(draw.contour(values, level).coordinates).map((ring) => ({ xy: inMetres(ring, quantity), closed: true })),
  );
}

const BELOW_ALL = -1e6;

type Ring = readonly (readonly number[])[];
const rings = (polygons: readonly (readonly Ring[])[]): readonly Ring[] => polygons.flat();

function inMetres(ring: Ring, { cellM, rows }: Grid<Float32Array>): Float32Array {
  const xy = new Float32Array(ring.length * 2);
  ring.forEach(([x, y], i) => {
    xy[2 * i] = x! * cellM;
    xy[2 * i + 1] = (rows - y!) * cellM;
  });
  return xy;
}

/** The pieces of a ring that do not run along the map's edge. */
function withoutEdge(ring: Ring, grid: Grid<Float32Array>): readonly Outline[] {
  const onEdge = ([x, y]: readonly number[]) => x! <= 0.001 || y! <= 0.001 || x! >= grid.columns - 0.001 || y! >= grid.rows - 0.001;
  const firstEdge = ring.findIndex(onEdge);
  if (firstEdge < 0) return [{ xy: inMetres(ring, grid), closed: true }];
  const open = ring.slice(0, -1);
  const turned = [...open.slice(firstEdge), ...open.slice(0, firstEdge + 1)];
  const pieces: (readonly number[])[][] = [];
  let piece: (readonly number[])[] = [];
  for (const point of turned) {
    piece.push(point);
    if (onEdge(point)) {
      if (piece.length > 2) pieces.push(piece);
      piece = [point];
    }
  }
  return pieces.map((points) => ({ xy: inMetres(points, grid), closed: false }));
}

/** One pass of a 1-2-1 blur in both directions. */
function softened({ columns, rows, cellM, values }: Grid<Float32Array>): Grid<Float32Array> {
  const wide = new Float32Array(values.length);
  const out = new Float32Array(values.length);
  for (let at = 0; at < values.length; at++) {
    const column = at % columns;
    wide[at] = (values[column > 0 ? at - 1 : at]! + 2 * values[at]! + values[column < columns - 1 ? at + 1 : at]!) / 4;
  }
  for (let at = 0; at < values.length; at++) {
    const row = Math.floor(at / columns);
    out[at] = (wide[row > 0 ? at - columns : at]! + 2 * wide[at]! + wide[row < rows - 1 ? at + columns : at]!) / 4;
  }
  return { columns, rows, cellM, values: out };
}
