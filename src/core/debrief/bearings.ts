import { asIntervened } from '../run/intervention';
import { antennaHeightM, type Mark, TICKS_PER_S } from '../run/state';
import { tagAt } from '../run/tagMotion';
import type { Evidence } from '../technique/habit';
import { tunedTag } from '../technique/tunedTag';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { pointOver } from '../world/height';
import { lineOfSight } from '../world/lineOfSight';
import { type WaveArrow, waveArrows } from './lossBudget';
import { rowAt, type Timeline } from './timeline';

/** A marked bearing against the truth. */
export type BearingRow = {
  /** As the notebook numbers it, from 1. */
  readonly number: number;
  readonly atS: number;
  readonly at: MapPoint;
  readonly struckOut: boolean;
  readonly tag: number;
  readonly tagAt: MapPoint;
  readonly takenDeg: number;
  readonly trueDeg: number;
  /** Taken minus true, clockwise positive, degrees in (-180, 180]. */
  readonly errorDeg: number;
  /** Where all waves together were loudest, degrees; `null` where no pulse was heard of near the mark. */
  readonly loudestDeg: number | null;
  readonly distanceM: number;
  readonly netGainDb: number;
  readonly excessDb: number | null;
  /** Over the ground alone: woods and houses are not counted. */
  readonly inSight: boolean;
};

/** A pulse speaks for a mark when it came this shortly before. */
const SHORTLY_S = 4;

export function bearingRows(evidence: Evidence, timeline: Timeline): readonly BearingRow[] {
  const { exercise, run } = evidence;
  return run.state.notebook.map((mark, i): BearingRow => {
    const { scenario, world } = exercise;
    const state = run.states[Math.min(run.states.length - 1, mark.atTick)]!;
    const tag = tunedTag(evidence, state);
    const atS = mark.atTick / TICKS_PER_S;
    const place = tagAt(scenario, tag, atS);
    const trueDeg = bearingDeg(mark.at, place);
    const row = rowAt(timeline, atS);
    const near = row >= 0 && atS - timeline.timeS[row]! <= SHORTLY_S ? row : -1;
    const ends = [pointOver(world, mark.at, antennaHeightM(state.hold)), pointOver(world, place, scenario.tags[tag]!.heightM)] as const;
    return {
      number: i + 1,
      atS,
      at: mark.at,
      struckOut: mark.struckOut,
      tag,
      tagAt: place,
      takenDeg: mark.bearingDeg,
      trueDeg,
      errorDeg: turnDeg(trueDeg, mark.bearingDeg),
      loudestDeg: near < 0 ? null : timeline.loudestDeg[near]!,
      distanceM: distanceM(mark.at, place),
      netGainDb: mark.gainDb - mark.attenuatorDb,
      excessDb: near < 0 ? null : timeline.excessDb[near]!,
      inSight: lineOfSight(world, ...ends).clear,
    };
  });
}

/** The waves behind each mark, in the notebook's order; costs the terrain field towards each place. */
export function* wavesBehind({ exercise, run }: Evidence, rows: readonly BearingRow[]): Generator<readonly WaveArrow[]> {
  for (const { at, atS, tag, number } of rows) {
    const mark: Mark = run.state.notebook[number - 1]!;
    const state = run.states[Math.min(run.states.length - 1, mark.atTick)]!;
    yield waveArrows(asIntervened(exercise, state), tag, at, antennaHeightM(state.hold), atS);
  }
}
