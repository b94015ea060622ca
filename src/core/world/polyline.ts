import type { MapPoint } from '../units/frames';
import { lengthM } from './directions';

/** The line with its corners cut, ends kept (Chaikin 1974); the new points stay inside the old corners. */
export function cornersCut(points: readonly MapPoint[], rounds: number): MapPoint[] {
  let line = [...points];
  for (let round = 0; round < rounds && line.length > 2; round++) {
    const next: MapPoint[] = [line[0]!];
    for (let i = 0; i + 1 < line.length; i++) {
      const a = line[i]!;
      const b = line[i + 1]!;
      if (i > 0) next.push(between(a, b, 0.25));
      if (i + 2 < line.length) next.push(between(a, b, 0.75));
    }
    next.push(line[line.length - 1]!);
    line = next;
  }
  return line;
}

/** Each inner point moved to the weighted mean of itself and its two neighbours. */
export function softened(points: readonly MapPoint[], rounds: number): MapPoint[] {
  let line = [...points];
  for (let round = 0; round < rounds; round++)
    line = line.map((p, i) => {
      const [a, b] = [line[i - 1], line[i + 1]];
      return a && b ? { eM: 0.25 * a.eM + 0.5 * p.eM + 0.25 * b.eM, nM: 0.25 * a.nM + 0.5 * p.nM + 0.25 * b.nM } : p;
    });
  return line;
}

export const between = (a: MapPoint, b: MapPoint, share: number): MapPoint => ({
  eM: a.eM + (b.eM - a.eM) * share,
  nM: a.nM + (b.nM - a.nM) * share,
});

export const gapM = (a: MapPoint, b: MapPoint): number => lengthM(b.eM - a.eM, b.nM - a.nM);

/** Points along the line at steps of at most `stepM`, corners included. */
export function stepped(points: readonly MapPoint[], stepM: number): MapPoint[] {
  const line: MapPoint[] = points.length > 0 ? [points[0]!] : [];
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i]!;
    const b = points[i + 1]!;
    const steps = Math.max(1, Math.ceil(gapM(a, b) / stepM));
    for (let k = 1; k <= steps; k++) line.push(between(a, b, k / steps));
  }
  return line;
}
