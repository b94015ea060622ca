import { pennedMarks } from '../run/penned';
import type { Recording } from '../run/record';
import { type RunState, TICKS_PER_S } from '../run/state';
import { tagAt } from '../run/tagMotion';
import { soughtTag } from '../run/task';
import { type Grade, gradeReplay } from '../technique/grade';
import type { Evidence } from '../technique/habit';
import { type BearingRow, bearingRows } from './bearings';
import { excessShares, excessTrack, type TrackPiece } from './excessTrack';
import { type FixAgainstTruth, fixesAgainstTruth } from './fixAgainstTruth';
import { type GainDistance, gainDistanceOf } from './gainDistance';
import { type Poses, posesOf } from './poses';
import { judgeRuledOut, type RuledOutJudged } from './ruledOut';
import { judgeStart, type StartJudged, startPlaces } from './startChoice';
import { judgeTagCheck, type TagCheckJudged } from './tagCheckJudged';
import { type Timeline, timelineOf } from './timeline';

/** Everything that a debrief shows of a run but the waves behind its bearings: plain data that a worker may hand over. */
export type Debriefing = {
  readonly grade: Omit<Grade, 'replayMatches'>;
  readonly end: RunState;
  readonly timeline: Timeline;
  readonly poses: Poses;
  readonly track: readonly TrackPiece[];
  readonly shares: ReturnType<typeof excessShares>;
  readonly bearings: readonly BearingRow[];
  /** The fix after each bearing that stands. */
  readonly fixes: readonly FixAgainstTruth[];
  /** `null` where no way leads to the tag from any start. */
  readonly start: StartJudged | null;
  readonly gainDistance: GainDistance;
  /** `null` where no ground was ruled out and none could have been. */
  readonly ruledOut: RuledOutJudged | null;
  /** `null` where the exercise did not ask for it. */
  readonly tagCheck: TagCheckJudged | null;
};

export function debriefOf(evidence: Evidence, recording: Pick<Recording, 'practice'>): Debriefing {
  const { run } = evidence;
  const [timeline, poses] = [timelineOf(evidence), posesOf(run.states)];
  const bearings = bearingRows(evidence, timeline);
  return {
    grade: gradeReplay(evidence, recording),
    end: run.state,
    timeline,
    poses,
    track: excessTrack(timeline, poses),
    shares: excessShares(timeline),
    bearings,
    fixes: fixesAgainstTruth(pennedMarks(run.state.notebook), bearings),
    start: startOf(evidence),
    gainDistance: gainDistanceOf(evidence),
    ruledOut: judgeRuledOut(evidence),
    tagCheck: judgeTagCheck(evidence),
  };
}

function startOf({ exercise, run: { state } }: Evidence): StartJudged | null {
  const { world, scenario } = exercise;
  const { startChoice } = state;
  // A tag that moves is sought where it was when the start was chosen.
  const place = tagAt(scenario, soughtTag(scenario), (startChoice?.atTick ?? state.tick) / TICKS_PER_S);
  return judgeStart(world, startPlaces(world, scenario), startChoice?.at ?? null, place, scenario.limits.paceMPerS);
}
