import type { HatchGrid } from '../../core/run/ruleOut';
import type { MapPoint } from '../../core/units/frames';

/** A stroke of the hatching, from and to. */
export type HatchLine = readonly [MapPoint, MapPoint];

/** Strokes closer than this on the screen are a grey, not a hatching. */
const LEAST_GAP_PX = 6;

/**
 * Strokes up to the right (or, `falling`, down) through the squares that are hatched, run together where squares follow one another;
 * seen from afar fewer of them.
 */
export function hatchLines({ columns, cellM, hatched }: HatchGrid, pxPerM: number, falling = false): readonly HatchLine[] {
  const every = Math.max(1, Math.ceil(LEAST_GAP_PX / ((cellM * pxPerM) / Math.SQRT2)));
  const lines: HatchLine[] = [];
  for (let offset = -columns + 1; offset < columns; offset++) {
    if (((offset % every) + every) % every !== 0) continue;
    let from = -1;
    const length = columns - Math.abs(offset);
    for (let step = 0; step <= length; step++) {
      const [column, row] = [Math.max(0, offset) + step, Math.max(0, -offset) + step];
      const at = falling ? columns - 1 - column : column;
      const isIn = step < length && hatched[row * columns + at] === 1;
      if (isIn && from < 0) from = step;
      if (isIn || from < 0) continue;
      const corner = (k: number): MapPoint => {
        const east = (Math.max(0, offset) + k) * cellM;
        return { eM: falling ? columns * cellM - east : east, nM: (Math.max(0, -offset) + k) * cellM };
      };
      lines.push([corner(from), corner(step)]);
      from = -1;
    }
  }
  return lines;
}
