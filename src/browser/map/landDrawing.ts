import { COVER, type World } from '../../core/world/world';
import { fineHeights } from './fineHeights';
import { type ContourLine, contourLines, coverOutlines, type Outline } from './outlines';
import { reliefShade, type Shade } from './reliefShade';

/** Everything about the land that is costly to draw and the same for the whole run: made once, in a worker. */
export type LandDrawing = {
  readonly sizeM: number;
  readonly contourIntervalM: number;
  readonly contours: readonly ContourLine[];
  readonly shade: Shade;
  readonly wood: readonly Outline[];
  readonly scrub: readonly Outline[];
  readonly wet: readonly Outline[];
  readonly rock: readonly Outline[];
  readonly water: readonly Outline[];
};

/** Most cells of the fine grid along one side: what a phone's memory carries easily. */
const MOST_FINE_CELLS = 1_400;

export function landDrawing(world: World): LandDrawing {
  const { groundM, cover } = world;
  const factor = Math.max(1, Math.min(4, Math.floor(MOST_FINE_CELLS / groundM.columns)));
  const fine = fineHeights(groundM, factor);
  const contourIntervalM = intervalFor(groundM.values);
  return {
    sizeM: world.sizeM,
    contourIntervalM,
    contours: contourLines(factor > 2 ? fineHeights(groundM, 2) : fine, contourIntervalM),
    shade: reliefShade(fine, 1.4),
    wood: coverOutlines(cover, [COVER.wood]),
    scrub: coverOutlines(cover, [COVER.scrub]),
    wet: coverOutlines(cover, [COVER.wet]),
    rock: coverOutlines(cover, [COVER.rock]),
    water: coverOutlines(cover, [COVER.water], 1),
  };
}

/** Contour interval that gives a readable number of lines: 2.5, 5, 10 or 20 m by the height between low and high ground. */
function intervalFor(heightsM: Float32Array): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of heightsM) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  const range = most - least;
  return range < 40 ? 2.5 : range < 130 ? 5 : range < 520 ? 10 : 20;
}
