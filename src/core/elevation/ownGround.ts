import { type OwnHeights, packedHeights } from '../scenario/ownHeights';
import type { Scenario } from '../scenario/schema';
import type { ClippedHeights, ElevationWindow } from './window';

/** Widest relief and base that the scenario's own numbers hold. */
const MOST_STRENGTH_M = 600;
const MOST_BASE_M = 1_500;

/** A piece of ground as it goes into an exercise, `side` cells to a row. */
export type PackedPiece = {
  readonly side: number;
  readonly own: OwnHeights;
  /** Lowest and highest of its heights, metres above sea level. */
  readonly lowM: number;
  readonly highM: number;
  /** Cells that had no height and were filled from their rims. */
  readonly filled: number;
};

/** Packs a piece that was cut out: the slow half of laying an exercise on it. */
export function packedPiece({ side, heightsM, filled }: ClippedHeights): PackedPiece {
  let [lowM, highM] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const h of heightsM) {
    lowM = Math.min(lowM, h);
    highM = Math.max(highM, h);
  }
  return { side, own: packedHeights(heightsM, side), lowM, highM, filled };
}

/**
 * The exercise on a piece of real ground: its heights, the map's new size, and the numbers of the relief that describe it (other parts ask
 * how hilly the land is). Start and tags keep their places where these lie on the new map, else they go to its middle; lines, buildings and
 * patches set by hand stay only where all of them lies inside.
 */
export function onOwnGround(
  scenario: Scenario,
  { sizeM }: Pick<ElevationWindow, 'sizeM'>,
  { side, own, lowM, highM }: PackedPiece,
  source: string,
): Scenario {
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
        strengthM: Math.min(MOST_STRENGTH_M, Math.round(highM - lowM)),
        baseHeightM: Math.min(MOST_BASE_M, Math.max(0, Math.round(lowM))),
      },
      own: { ...own, source },
      ...(ground.patches && { patches: ground.patches.filter(({ outline }) => outline.every(inside)) }),
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

/** Cells of drawn ground, metres: what an exercise of this size is drawn in as a rule. */
const DRAWN_CELL_M = 10;

/** The exercise on ground that is drawn from its seed again; everything else stays. */
export function onDrawnGround(scenario: Scenario): Scenario {
  const { own: _given, ...ground } = scenario.ground;
  return { ...scenario, ground: { ...ground, cellM: DRAWN_CELL_M } };
}
