import type { World } from '../../core/world/world';
import type { Palette } from '../design/palette';
import { linePath } from './landPaths';

/** What people put on the land, as paths in metres east and south of the north-west corner. */
export type BuiltPaths = {
  readonly streams: Path2D;
  readonly walls: Path2D;
  readonly roads: Path2D;
  readonly tracks: Path2D;
  readonly paths: Path2D;
  readonly buildings: Path2D;
};

export function builtPaths(world: World): BuiltPaths {
  const joined = (parts: readonly Path2D[]): Path2D => {
    const whole = new Path2D();
    for (const part of parts) whole.addPath(part);
    return whole;
  };
  const lines = (kind: 'road' | 'track' | 'path') =>
    joined(world.tracks.filter((track) => track.kind === kind).map(({ points }) => linePath(world, points)));
  return {
    streams: joined(world.streams.map(({ points }) => linePath(world, points))),
    walls: joined(world.fieldWalls.map(({ points }) => linePath(world, points))),
    roads: lines('road'),
    tracks: lines('track'),
    paths: lines('path'),
    buildings: joined(world.buildings.map((building) => footprint(world, building.corners))),
  };
}

function footprint({ sizeM }: World, corners: World['buildings'][number]['corners']): Path2D {
  const path = new Path2D();
  corners.forEach(({ eM, nM }, i) => {
    if (i === 0) path.moveTo(eM, sizeM - nM);
    else path.lineTo(eM, sizeM - nM);
  });
  path.closePath();
  return path;
}

export function paintWalls(context: CanvasRenderingContext2D, { walls }: BuiltPaths, palette: Palette, px: number): void {
  context.globalAlpha = 0.5;
  context.strokeStyle = palette.ink;
  context.lineWidth = 0.8 * px;
  context.stroke(walls);
  context.globalAlpha = 1;
}

/** A road is a double line, a track is dashed, a path is dotted. */
export function paintTracks(context: CanvasRenderingContext2D, built: BuiltPaths, palette: Palette, px: number): void {
  context.lineCap = 'round';
  context.strokeStyle = palette['ink-2'];
  context.lineWidth = 4.6 * px;
  context.stroke(built.roads);
  context.strokeStyle = palette.paper;
  context.lineWidth = 2.8 * px;
  context.stroke(built.roads);
  context.strokeStyle = palette.ink;
  context.globalAlpha = 0.72;
  context.lineCap = 'butt';
  context.setLineDash([7 * px, 4 * px]);
  context.lineWidth = 1.5 * px;
  context.stroke(built.tracks);
  context.lineCap = 'round';
  context.setLineDash([0.01 * px, 4.2 * px]);
  context.lineWidth = 1.7 * px;
  context.stroke(built.paths);
  context.setLineDash([]);
  context.lineCap = 'butt';
  context.globalAlpha = 1;
}

export function paintBuilt(context: CanvasRenderingContext2D, { buildings }: BuiltPaths, palette: Palette, px: number): void {
  context.fillStyle = palette.ink;
  context.globalAlpha = 0.82;
  context.fill(buildings);
  // Never smaller than a mark that can be seen when the whole map is shown.
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.6 * px;
  context.lineJoin = 'miter';
  context.stroke(buildings);
  context.lineJoin = 'round';
  context.globalAlpha = 1;
}

/** A line with a tick across it at each pole, an open square at each tower. */
export function paintWires(context: CanvasRenderingContext2D, world: World, palette: Palette, px: number): void {
  context.strokeStyle = palette.ink;
  for (const { supports, voltage } of world.powerLines) {
    context.lineWidth = (voltage === 'high' ? 1.5 : 1.1) * px;
    context.beginPath();
    supports.forEach(({ foot }, i) => {
      if (i === 0) context.moveTo(foot.eM, world.sizeM - foot.nM);
      else context.lineTo(foot.eM, world.sizeM - foot.nM);
    });
    supports.forEach((support, i) => {
      const [before, after] = [supports[Math.max(0, i - 1)]!.foot, supports[Math.min(supports.length - 1, i + 1)]!.foot];
      const [dx, dy] = [after.eM - before.eM, -(after.nM - before.nM)];
      const length = Math.hypot(dx, dy) || 1;
      const [x, y] = [support.foot.eM, world.sizeM - support.foot.nM];
      if (support.kind === 'tower') context.rect(x - 3 * px, y - 3 * px, 6 * px, 6 * px);
      else {
        context.moveTo(x - (dy / length) * 4.5 * px, y + (dx / length) * 4.5 * px);
        context.lineTo(x + (dy / length) * 4.5 * px, y - (dx / length) * 4.5 * px);
      }
    });
    context.stroke();
  }
}
