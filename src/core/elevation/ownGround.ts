import { packedHeights } from '../scenario/ownHeights';
import type { Scenario } from '../scenario/schema';
import type { ClippedHeights, ElevationWindow } from './window';

/** Widest relief and base that the scenario's own numbers hold. */
const MOST_STRENGTH_M = 600;
const MOST_BASE_M = 1_500;

/**
 * The exercise on a piece of real ground: its heights, the map's new size, and the numbers of the relief that describe it (other parts ask
 * how hilly the land is). Start and tags keep their places where these lie on the new map, else they go to its middle; lines and buildings
 * set by hand stay only where all of them lies inside.
 */
export function onOwnGround(scenario: Scenario, piece: ElevationWindow, { side, heightsM }: ClippedHeights, source: string): Scenario {
  const sizeM = piece.sizeM;
  const packed = packedHeights(heightsM, side);
  const [lowM, highM] = heightsM.reduce(
    ([low, high], h) => [Math.min(low!, h), Math.max(high!, h)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
  const inside = ([eM, nM]: readonly [number, number]) => eM <= sizeM && nM <= sizeM;
  const moved = (at: readonly [number, number]): [number, number] =>
    inside(at) ? [at[0], at[1]] : [Math.round(sizeM / 2), Math.round(sizeM / 2)];
  const { ground } = scenario;
  return {
    ...scenario,
    ground: {
      ...ground,
      sizeM,
      cellM: sizeM / side,
      relief: {
        ...ground.relief,
        style: 'smooth',
        strengthM: Math.min(MOST_STRENGTH_M, Math.round(highM! - lowM!)),
        baseHeightM: Math.min(MOST_BASE_M, Math.max(0, Math.round(lowM!))),
      },
      own: { ...packed, source },
      powerLines: ground.powerLines.filter(({ route }) => route.every(inside)),
      buildings: ground.buildings.filter(({ at }) => inside(at)),
    },
    start: { ...scenario.start, at: moved(scenario.start.at) },
    tags: scenario.tags.map((tag) => ({
      ...tag,
      at: moved(tag.at),
      movement: tag.movement.kind === 'path' && !tag.movement.points.every(inside) ? { kind: 'stays' as const } : tag.movement,
    })),
  };
}
