import type { CoverName, CoverRule, GroundPlan } from '../scenario/schema';
import { blurred } from './blur';
import { fillOutline } from './fillOutline';
import type { Land } from './terrain';
import { COVER } from './world';

/** The slope of a cell is the mean over so many metres to each side: what is steep for one cell only is an edge in the survey. */
const SLOPE_REACH_M = 15;

/**
 * Lays the cover that an exercise sets itself over the one that was drawn: its rules one after the other, then its patches, each over all
 * before. Lakes and sea keep their water under rules.
 */
export function coverOver(
  { coverRules = [], patches = [] }: Pick<GroundPlan, 'coverRules' | 'patches'>,
  land: Land,
  cover: Uint8Array,
): void {
  const slopePercent = coverRules.some(asksForSlope) ? slopesOf(land) : null;
  for (const rule of coverRules) layRule(rule, land, slopePercent, cover);
  for (const { cover: name, outline } of patches) fillOutline(outline, cover, land.cells, land.cellM, coverNumber(name));
}

const coverNumber = (name: CoverName): number => COVER[name];
const asksForSlope = ({ steeperPercent, flatterPercent }: CoverRule): boolean =>
  steeperPercent !== undefined || flatterPercent !== undefined;

function layRule(rule: CoverRule, { groundM, isLake, isSea }: Land, slopePercent: Float32Array | null, cover: Uint8Array): void {
  const { aboveM = Number.NEGATIVE_INFINITY, belowM = Number.POSITIVE_INFINITY } = rule;
  const { steeperPercent = Number.NEGATIVE_INFINITY, flatterPercent = Number.POSITIVE_INFINITY } = rule;
  const number = coverNumber(rule.cover);
  for (let i = 0; i < cover.length; i++) {
    const slope = slopePercent ? slopePercent[i]! : 0;
    const fits = groundM[i]! >= aboveM && groundM[i]! <= belowM && slope >= steeperPercent && slope <= flatterPercent;
    if (fits && isLake[i] === 0 && isSea[i] === 0) cover[i] = number;
  }
}

/** Rise over run per cell, percent. */
function slopesOf({ groundM, cells, cellM }: Land): Float32Array {
  const slope = new Float32Array(groundM.length);
  for (let row = 0; row < cells; row++) {
    const [south, north] = [row > 0 ? cells : 0, row < cells - 1 ? cells : 0];
    for (let column = 0; column < cells; column++) {
      const i = row * cells + column;
      const [west, east] = [column > 0 ? 1 : 0, column < cells - 1 ? 1 : 0];
      const eastward = (groundM[i + east]! - groundM[i - west]!) / ((east + west) * cellM);
      const northward = ((groundM[i + north]! - groundM[i - south]!) * cells) / ((north + south) * cellM);
      slope[i] = 100 * Math.sqrt(eastward * eastward + northward * northward);
    }
  }
  return blurred(slope, cells, cells, Math.max(1, Math.round(SLOPE_REACH_M / cellM)));
}
