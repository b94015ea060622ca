import type { Replay } from '../run/replay';
import type { RunState } from '../run/state';
import type { Evidence } from '../technique/habit';
import { type Outlook, outlookOf } from '../technique/outlook';
import { toRad, wrapBearingDeg } from '../units/angles';
import type { MapPoint, SpacePoint } from '../units/frames';
import { type Grid, valueAt } from '../world/grid';
import { isOnMap } from '../world/height';
import { coverAt } from '../world/profile';
import { onTrack } from '../world/walking';
import { COVER, type PowerLine, type World } from '../world/world';

/** Heights are laid anew at half the cell, cover and tracks at a quarter, so that little is lost at their edges. */
const HEIGHT_SHARE = 2;
const COVER_SHARE = 4;

type Turn = { readonly there: <P extends MapPoint>(at: P) => P; readonly back: (at: MapPoint) => MapPoint; readonly sizeM: number };

/**
 * The same run on the same ground, both turned clockwise by an angle: log, truth, heights, cover and wires. Openness is not
 * computed anew, for a turned square has other edges: the view of a place is that of the place it came from.
 */
export function turnedEvidence(evidence: Evidence, byDeg: number): { readonly evidence: Evidence; readonly outlook: Outlook } {
  const { exercise, run } = evidence;
  const turn = turnOf(exercise.world.sizeM, byDeg);
  const known = outlookOf(exercise.world);
  const outlook: Outlook = {
    percentileAmong: (at, from) => known.percentileAmong(turn.back(at), turn.back(from)),
    contrastAround: (from) => known.contrastAround(turn.back(from)),
    reachable: (from, seconds) => known.reachable(turn.back(from), seconds).map(turn.there),
  };
  return { evidence: { exercise: { ...exercise, world: turnedWorld(exercise.world, turn) }, run: turnedRun(run, turn, byDeg) }, outlook };
}

function turnOf(oldM: number, byDeg: number): Turn {
  const [c, s] = [Math.cos(toRad(byDeg)), Math.sin(toRad(byDeg))];
  const sizeM = Math.ceil((oldM * (Math.abs(c) + Math.abs(s))) / 10) * 10;
  return {
    sizeM,
    there: (at) => {
      const [e, n] = [at.eM - oldM / 2, at.nM - oldM / 2];
      return { ...at, eM: sizeM / 2 + e * c + n * s, nM: sizeM / 2 - e * s + n * c };
    },
    back: ({ eM, nM }) => {
      const [e, n] = [eM - sizeM / 2, nM - sizeM / 2];
      return { eM: oldM / 2 + e * c - n * s, nM: oldM / 2 + e * s + n * c };
    },
  };
}

function turnedRun(run: Replay, { there }: Turn, byDeg: number): Replay {
  const turned = (deg: number) => wrapBearingDeg(deg + byDeg);
  const state = (old: RunState): RunState => ({
    ...old,
    at: there(old.at),
    hold: { ...old.hold, headingDeg: turned(old.hold.headingDeg) },
    legs: { ...old.legs, courseDeg: turned(old.legs.courseDeg), until: old.legs.until && there(old.legs.until) },
    notebook: old.notebook.map((mark) => ({ ...mark, at: there(mark.at), bearingDeg: turned(mark.bearingDeg) })),
  });
  // Notebooks are long and shared by thousands of states; only the last one is read.
  const states = run.states.map((old) => ({ ...state({ ...old, notebook: [] }) }));
  const pulses = run.pulses.map(({ heard, truth }) => ({
    heard,
    truth: {
      ...truth,
      tagAt: there(truth.tagAt),
      trueBearingDeg: turned(truth.trueBearingDeg),
      bestHeadingDeg: turned(truth.bestHeadingDeg),
    },
  }));
  return { ...run, state: state(run.state), states, pulses };
}

function turnedWorld(world: World, turn: Turn): World {
  const { sizeM, back } = turn;
  const columnsOf = (cellM: number) => Math.round(sizeM / cellM);
  const laid = <A extends Float32Array | Uint8Array>(cellM: number, values: A, worth: (at: MapPoint) => number): Grid<A> => {
    const columns = columnsOf(cellM);
    for (let i = 0; i < values.length; i++)
      values[i] = worth(back({ eM: ((i % columns) + 0.5) * cellM, nM: (Math.floor(i / columns) + 0.5) * cellM }));
    return { columns, rows: columns, cellM, values };
  };
  const [heightCellM, coverCellM] = [world.cellM / HEIGHT_SHARE, world.cellM / COVER_SHARE];
  const count = (cellM: number) => columnsOf(cellM) ** 2;
  // What lay beyond the map can't be walked.
  const cover = (at: MapPoint) => (isOnMap(world, at) ? coverAt(world, at.eM, at.nM) : COVER.water);
  const track = (at: MapPoint) => (isOnMap(world, at) && onTrack(world, at.eM, at.nM) ? 1 : 0);
  return {
    ...world,
    sizeM,
    groundM: laid(heightCellM, new Float32Array(count(heightCellM)), ({ eM, nM }) => valueAt(world.groundM, eM, nM)),
    cover: laid(coverCellM, new Uint8Array(count(coverCellM)), cover),
    trackMask: laid(coverCellM, new Uint8Array(count(coverCellM)), track),
    powerLines: world.powerLines.map((line) => turnedLine(line, turn)),
  };
}

const turnedLine = (line: PowerLine, { there }: Turn): PowerLine => ({
  ...line,
  supports: line.supports.map((support) => ({ ...support, foot: there<SpacePoint>(support.foot) })),
  spans: line.spans.map((span) => ({ ...span, from: there<SpacePoint>(span.from), to: there<SpacePoint>(span.to) })),
});
