import type { Fix } from '../fix/fix';
import { liesWithin, notebookFix } from '../fix/notebookFix';
import type { Mark } from '../run/state';
import { distanceM, type MapPoint } from '../units/frames';
import type { BearingRow } from './bearings';

/** The fix that the notebook gave at a time, against where the tag was then. */
export type FixAgainstTruth = {
  /** When the last of its bearings was taken. */
  readonly atS: number;
  /** Numbers of the bearings in it, as the notebook numbers them. */
  readonly bearings: readonly number[];
  readonly fix: Fix;
  readonly tagAt: MapPoint;
  /** `null` without a fix. */
  readonly offM: number | null;
  /** Is the tag in the area for the learner's own spread? `null` without one. */
  readonly within: boolean | null;
};

/** One row for each bearing that stands, in time order: the fix from it and the earlier ones of the same tag. */
export function fixesAgainstTruth(marks: readonly Mark[], rows: readonly BearingRow[]): readonly FixAgainstTruth[] {
  const standing = rows.filter(({ struckOut }) => !struckOut);
  return standing.map(({ atS, tag, tagAt }, i) => {
    const counted = standing.slice(0, i + 1).filter((row) => row.tag === tag);
    const fix = notebookFix(counted.map(({ number }) => marks[number - 1]!));
    const bearings = counted.map(({ number }) => number);
    if (!fix.ok) return { atS, bearings, fix, tagAt, offM: null, within: null };
    const within = fix.learnerEllipse && liesWithin(fix, fix.learnerEllipse, tagAt);
    return { atS, bearings, fix, tagAt, offM: distanceM({ eM: fix.x, nM: fix.y }, tagAt), within };
  });
}
