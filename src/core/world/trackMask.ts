import { stepped } from './polyline';
import type { Track } from './world';

/** 1 in every cell that a road, track or path runs through: asked at each step of a walk. */
export function maskTracks(tracks: readonly Track[], cells: number, cellM: number): Uint8Array {
  const mask = new Uint8Array(cells * cells);
  for (const { points } of tracks)
    for (const p of stepped(points, cellM / 3)) {
      const column = Math.min(cells - 1, Math.max(0, Math.floor(p.eM / cellM)));
      const row = Math.min(cells - 1, Math.max(0, Math.floor(p.nM / cellM)));
      mask[row * cells + column] = 1;
    }
  return mask;
}
