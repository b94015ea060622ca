import type { MapPoint } from '../../core/units/frames';
import type { World } from '../../core/world/world';
import type { LandDrawing } from './landDrawing';
import type { Outline } from './outlines';

/** A path in metres east and south of the north-west corner, with the box that holds it. */
export type BoxedPath = { readonly path: Path2D; readonly box: readonly [number, number, number, number]; readonly lengthM: number };

export type LandPaths = {
  readonly minor: readonly BoxedPath[];
  readonly index: readonly BoxedPath[];
  readonly heights: readonly HeightMark[];
  readonly wood: Path2D;
  readonly scrub: Path2D;
  readonly wet: Path2D;
  readonly rock: Path2D;
  readonly water: Path2D;
};

/** Where a height may be written on an index contour; the text stands with its head uphill where that is readable. */
export type HeightMark = { readonly x: number; readonly y: number; readonly turnRad: number; readonly text: string };

export function landPaths(land: LandDrawing): LandPaths {
  const lines = (index: boolean) => land.contours.filter((line) => line.index === index).flatMap((line) => line.lines.map(boxed));
  return {
    minor: lines(false),
    index: lines(true),
    heights: land.contours.filter(({ index }) => index).flatMap(({ heightM, lines: all }) => all.flatMap((line) => marksOn(line, heightM))),
    wood: areaPath(land.wood),
    scrub: areaPath(land.scrub),
    wet: areaPath(land.wet),
    rock: areaPath(land.rock),
    water: areaPath(land.water),
  };
}

/** Points of the world as a path, rounded at the bends. */
export function linePath(world: Pick<World, 'sizeM'>, points: readonly MapPoint[]): Path2D {
  const xy = new Float32Array(points.length * 2);
  points.forEach(({ eM, nM }, i) => {
    xy[2 * i] = eM;
    xy[2 * i + 1] = world.sizeM - nM;
  });
  const path = new Path2D();
  trace(path, { xy, closed: false });
  return path;
}

/** The areas within outlines as one path, to be filled even-odd. */
export function areaPath(outlines: readonly Outline[]): Path2D {
  const path = new Path2D();
  for (const outline of outlines) trace(path, outline);
  return path;
}

function boxed(outline: Outline): BoxedPath {
  const path = new Path2D();
  trace(path, outline);
  const { xy } = outline;
  const box: [number, number, number, number] = [xy[0]!, xy[1]!, xy[0]!, xy[1]!];
  let lengthM = 0;
  for (let i = 0; i < xy.length; i += 2) {
    box[0] = Math.min(box[0], xy[i]!);
    box[1] = Math.min(box[1], xy[i + 1]!);
    box[2] = Math.max(box[2], xy[i]!);
    box[3] = Math.max(box[3], xy[i + 1]!);
    if (i > 0) lengthM += Math.hypot(xy[i]! - xy[i - 2]!, xy[i + 1]! - xy[i - 1]!);
  }
  return { path, box, lengthM };
}

/** Through the middles of the pieces with the corners as handles: smooth, and never outside the corners' hull. */
function trace(path: Path2D, { xy, closed }: Outline): void {
  const count = xy.length / 2;
  if (count < 3) {
    if (count === 2) {
      path.moveTo(xy[0]!, xy[1]!);
      path.lineTo(xy[2]!, xy[3]!);
    }
    return;
  }
  const middle = (i: number): [number, number] => [(xy[2 * i]! + xy[2 * i + 2]!) / 2, (xy[2 * i + 1]! + xy[2 * i + 3]!) / 2];
  if (closed) path.moveTo(...middle(0));
  else path.moveTo(xy[0]!, xy[1]!);
  for (let i = closed ? 1 : 1; i + 1 < count; i++) path.quadraticCurveTo(xy[2 * i]!, xy[2 * i + 1]!, ...middle(i));
  if (closed) {
    path.quadraticCurveTo(xy[0]!, xy[1]!, ...middle(0));
    path.closePath();
  } else path.lineTo(xy[2 * count - 2]!, xy[2 * count - 1]!);
}

const MARK_EVERY_M = 900;

function marksOn({ xy }: Outline, heightM: number): readonly HeightMark[] {
  const marks: HeightMark[] = [];
  let sinceM = MARK_EVERY_M * 0.6;
  const reach = 4;
  for (let i = 2 * reach; i + 2 * reach + 1 < xy.length; i += 2) {
    sinceM += Math.hypot(xy[i]! - xy[i - 2]!, xy[i + 1]! - xy[i - 1]!);
    if (sinceM < MARK_EVERY_M) continue;
    const [bx, by] = [xy[i]! - xy[i - 2 * reach]!, xy[i + 1]! - xy[i - 2 * reach + 1]!];
    const [ax, ay] = [xy[i + 2 * reach]! - xy[i]!, xy[i + 2 * reach + 1]! - xy[i + 1]!];
    const straight = (bx * ax + by * ay) / (Math.hypot(bx, by) * Math.hypot(ax, ay) || 1);
    if (straight < 0.985) continue;
    let turnRad = Math.atan2(by + ay, bx + ax);
    if (turnRad > Math.PI / 2) turnRad -= Math.PI;
    if (turnRad < -Math.PI / 2) turnRad += Math.PI;
    marks.push({ x: xy[i]!, y: xy[i + 1]!, turnRad, text: String(heightM) });
    sinceM = 0;
  }
  return marks;
}
