import { limitedDb } from '../receiver/limiter';
import type { Heard } from './air';
import type { Chart, ChartDot } from './chart';

const DRIVES_DB = Array.from({ length: 63 }, (_, i) => -74 + 2 * i);

/** The receiver's own curve: how loud a beep comes out against how strongly it is driven. `dots` are beeps on it. */
export function limiterChart(dots: readonly { readonly name: string; readonly heard: Heard; readonly kind: ChartDot['kind'] }[]): Chart {
  return {
    name: 'Why: the receiver’s limiter',
    x: { from: -74, to: 50, name: 'signal × gain', unit: 'dB', at: [-50, -25, 0, 25, 50] },
    y: { from: -74, to: 8, name: 'loudness', unit: 'dB', at: [-50, -25, 0] },
    lines: [{ kind: 'law', name: 'flat out', points: DRIVES_DB.map((drive) => [drive, limitedDb(drive)] as const) }],
    dots: dots.map(({ name, heard, kind }) => ({ kind, name, x: heard.driveDb, y: heard.levelDb })),
  };
}
