import type { Debriefing } from '../../../core/debrief/debriefing';
import type { WaveArrow } from '../../../core/debrief/lossBudget';
import { POSES_PER_S, type Poses, posesEndS, stateAt } from '../../../core/debrief/poses';
import { rowAt } from '../../../core/debrief/timeline';
import type { Scenario } from '../../../core/scenario/schema';
import type { MapPoint } from '../../../core/units/frames';
import type { Easel } from '../../map/brush';
import { paintBearings, paintWaves } from './paintBearings';
import { paintFix, paintStarts } from './paintFix';
import { paintEnds, paintHere, paintOther, paintTags } from './paintPlaces';
import { paintRuledOut } from './paintRuledOut';
import { paintBeside, paintStretch, paintTrack } from './paintTrack';

/** All that lies on the land at the scrubber's time. */
export type OnDebriefMap = {
  readonly scenario: Scenario;
  readonly debriefing: Debriefing;
  readonly steady: Debriefing | null;
  readonly waves: ReadonlyMap<number, readonly WaveArrow[]>;
  /** Waves at every bearing, not only at the one that is looked at. */
  readonly allWaves: boolean;
  readonly showFix: boolean;
  readonly showRuledOut: boolean;
  readonly atS: number;
  readonly stretch: { readonly fromS: number; readonly toS: number } | null;
  readonly bearing: number | null;
};

export function paintRun(easel: Easel, on: OnDebriefMap): void {
  const { scenario, debriefing, steady, atS } = on;
  const { poses, bearings, track, end, timeline } = debriefing;
  if (on.showRuledOut && debriefing.ruledOut) paintRuledOut(easel, debriefing.ruledOut);
  if (on.stretch) paintStretch(easel, placesBetween(scenario, poses, on.stretch.fromS, on.stretch.toS));
  if (steady) {
    paintBeside(
      easel,
      steady.track.flatMap(({ points }) => points),
    );
  }
  const fix = debriefing.fixes.filter((one) => one.atS <= atS + 0.05).at(-1);
  if (on.showFix && fix) paintFix(easel, fix, end.notebook);
  if (on.showFix && debriefing.start) paintStarts(easel, debriefing.start);
  paintTrack(easel, track);
  const shown = bearings.filter((row) => row.atS <= atS + 0.05 || row.number === on.bearing);
  paintBearings(easel, shown, on.bearing);
  for (const row of bearings) {
    if (on.allWaves || row.number === on.bearing) paintWaves(easel, row.at, on.waves.get(row.number) ?? []);
  }
  paintTags(easel, scenario, atS);
  paintEnds(easel, track[0]?.points[0] ?? end.at, end.guess);
  if (steady) paintOther(easel, stateAt(scenario, steady.poses, atS).at);
  const row = rowAt(timeline, atS);
  paintHere(easel, stateAt(scenario, poses, atS), row < 0 ? null : timeline.trueBearingDeg[row]!);
}

function placesBetween(scenario: Scenario, poses: Poses, fromS: number, toS: number): readonly MapPoint[] {
  const places: MapPoint[] = [];
  for (let s = fromS; s <= Math.min(toS, posesEndS(poses)); s += 2 / POSES_PER_S) places.push(stateAt(scenario, poses, s).at);
  return places;
}
