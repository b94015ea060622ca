import type { MapPoint } from '../units/frames';
import type { World } from '../world/world';

/** Does the straight way between two places cross a power line? Reading on both sides is the test that tells the side. */
export const acrossWires = (world: World, from: MapPoint, to: MapPoint): boolean =>
  world.powerLines.some(({ spans }) => spans.some((span) => cross(from, to, span.from, span.to)));

/** On which side of the line from a to b a point lies: positive left, negative right. */
const side = (a: MapPoint, b: MapPoint, point: MapPoint): number => (b.eM - a.eM) * (point.nM - a.nM) - (b.nM - a.nM) * (point.eM - a.eM);

const cross = (a: MapPoint, b: MapPoint, c: MapPoint, d: MapPoint): boolean =>
  side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) < 0;
