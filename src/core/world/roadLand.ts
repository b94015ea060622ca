import type { MapPoint } from '../units/frames';
import type { Land } from './terrain';
import { COVER } from './world';

/** The land as road makers see it: squares of about 25 m. */
export type RoadLand = {
  readonly side: number;
  readonly squareM: number;
  readonly heightM: Float32Array;
  /** Steepest fall across the square, rise over run. */
  readonly steep: Float32Array;
  /** How much dearer a metre is here than on open ground; Infinity in water. */
  readonly toll: Float32Array;
  /** 1 where a way runs already. */
  readonly hasWay: Uint8Array;
};

const TOLLS: Readonly<Record<number, number>> = {
  [COVER.open]: 1,
  [COVER.wood]: 1.25,
  [COVER.scrub]: 1.15,
  [COVER.wet]: 2.2,
  [COVER.water]: Number.POSITIVE_INFINITY,
  [COVER.rock]: 2.5,
  [COVER.built]: 3,
};

/** Ways cross the map's rim, they do not run along it. */
function rimToll(column: number, row: number, side: number): number {
  const squares = Math.min(column, row, side - 1 - column, side - 1 - row);
  return squares < 6 ? 1 + 0.4 * (6 - squares) : 1;
}

export function roadLandOf(land: Land, cover: Uint8Array): RoadLand {
  const side = Math.max(20, Math.min(160, Math.round(land.sizeM / 25)));
  const squareM = land.sizeM / side;
  const heightM = new Float32Array(side * side);
  const toll = new Float32Array(side * side);
  const steep = new Float32Array(side * side);
  for (let row = 0, i = 0; row < side; row++)
    for (let column = 0; column < side; column++, i++) {
      const at = cellAt(land, (column + 0.5) * squareM, (row + 0.5) * squareM);
      heightM[i] = land.groundM[at]!;
      toll[i] = TOLLS[cover[at]!]! * rimToll(column, row, side);
      // A square with any water at its corners counts as water, so that a smoothed road keeps dry.
      for (const [x, y] of [
        [0, 0],
        [1, 0],
        [0, 1],
        [1, 1],
      ] as const)
        if (cover[cellAt(land, (column + x) * squareM, (row + y) * squareM)] === COVER.water) toll[i] = Number.POSITIVE_INFINITY;
    }
  for (let row = 0, i = 0; row < side; row++)
    for (let column = 0; column < side; column++, i++) {
      const east = (heightM[column < side - 1 ? i + 1 : i]! - heightM[column > 0 ? i - 1 : i]!) / (2 * squareM);
      const north = (heightM[row < side - 1 ? i + side : i]! - heightM[row > 0 ? i - side : i]!) / (2 * squareM);
      steep[i] = Math.sqrt(east * east + north * north);
    }
  return { side, squareM, heightM, steep, toll, hasWay: new Uint8Array(side * side) };
}

export function cellAt(land: Pick<Land, 'cells' | 'cellM'>, eM: number, nM: number): number {
  const column = Math.min(land.cells - 1, Math.max(0, Math.floor(eM / land.cellM)));
  const row = Math.min(land.cells - 1, Math.max(0, Math.floor(nM / land.cellM)));
  return row * land.cells + column;
}

export const squareAt = (land: RoadLand, p: MapPoint): number => {
  const column = Math.min(land.side - 1, Math.max(0, Math.floor(p.eM / land.squareM)));
  return Math.min(land.side - 1, Math.max(0, Math.floor(p.nM / land.squareM))) * land.side + column;
};
