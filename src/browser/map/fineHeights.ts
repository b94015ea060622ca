import type { Grid } from '../../core/world/grid';

/**
 * Heights on a grid `factor` times finer, Catmull-Rom in both directions, so that neither shading nor contours show the
 * cells that the radio model works with.
 */
export function fineHeights(coarse: Grid<Float32Array>, factor: number): Grid<Float32Array> {
  const columns = coarse.columns * factor;
  const rows = coarse.rows * factor;
  const taps = Array.from({ length: factor }, (_, i) => tap((i + 0.5) / factor - 0.5));
  const wide = new Float32Array(columns * coarse.rows);
  for (let row = 0; row < coarse.rows; row++) {
    for (let i = 0; i < columns; i++) {
      wide[row * columns + i] = along(
        taps[i % factor]!,
        Math.floor(i / factor),
        coarse.columns,
        (c) => coarse.values[row * coarse.columns + c]!,
      );
    }
  }
  const values = new Float32Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    const t = taps[j % factor]!;
    const base = Math.floor(j / factor);
    for (let i = 0; i < columns; i++) values[j * columns + i] = along(t, base, coarse.rows, (r) => wide[r * columns + i]!);
  }
  return { columns, rows, cellM: coarse.cellM / factor, values };
}

type Tap = { readonly offset: number; readonly weights: readonly [number, number, number, number] };

function tap(shift: number): Tap {
  const offset = Math.floor(shift);
  const t = shift - offset;
  const [t2, t3] = [t * t, t * t * t];
  return { offset, weights: [(-t3 + 2 * t2 - t) / 2, (3 * t3 - 5 * t2 + 2) / 2, (-3 * t3 + 4 * t2 + t) / 2, (t3 - t2) / 2] };
}

function along({ offset, weights }: Tap, base: number, count: number, value: (i: number) => number): number {
  let sum = 0;
  for (let k = 0; k < 4; k++) sum += weights[k]! * value(Math.min(count - 1, Math.max(0, base + offset + k - 1)));
  return sum;
}
