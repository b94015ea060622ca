import type { Scenario } from '../scenario/schema';
import { toRad } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { type RunState, TICKS_PER_S } from './state';

/** Seconds a metre, up and down (our choice: a ladder with an antenna in one hand). */
const UP_S_PER_M = 5;
const DOWN_S_PER_M = 3;
/** One stands at a building this near to its wall; its cells, where nobody walks, come on top. */
const AT_WALL_M = 5;

type Roof = Scenario['ground']['buildings'][number];

/** Metres from a place to the wall of a building, 0 within it. */
function fromWallM({ at: [eM, nM], lengthM, widthM, alongDeg }: Roof, place: MapPoint): number {
  const centre = { eM, nM };
  const m = distanceM(centre, place);
  const off = toRad(bearingDeg(centre, place) - alongDeg);
  const past = (half: number, m1: number) => Math.max(0, Math.abs(m1) - half);
  return Math.hypot(past(lengthM / 2, m * Math.cos(off)), past(widthM / 2, m * Math.sin(off)));
}

/** Height of the roof or tower that may be climbed from a place, metres; `null` where none stands there. */
export function climbableM({ ground }: Pick<Scenario, 'ground'>, place: MapPoint): number | null {
  const reachM = AT_WALL_M + ground.cellM;
  const near = ground.buildings.filter((roof) => roof.climb === true && fromWallM(roof, place) <= reachM);
  return near.length === 0 ? null : Math.max(...near.map(({ heightM }) => heightM));
}

/** Up, which takes its time; nothing where nothing may be climbed, or the hands or the vehicle are in the way. */
export function climbed(scenario: Scenario, state: RunState): RunState {
  const heightM = climbableM(scenario, state.at);
  if (heightM === null || isAloft(state) || state.vehicle?.aboard || state.tick < state.busyUntilTick) return state;
  return busied({ ...state, hold: { ...state.hold, aloftM: heightM } }, heightM * UP_S_PER_M);
}

export function climbedDown(state: RunState): RunState {
  if (!isAloft(state) || state.tick < state.busyUntilTick) return state;
  const { aloftM = 0, ...hold } = state.hold;
  return busied({ ...state, hold }, aloftM * DOWN_S_PER_M);
}

export const isAloft = ({ hold }: Pick<RunState, 'hold'>): boolean => (hold.aloftM ?? 0) > 0;

const busied = (state: RunState, seconds: number): RunState => ({
  ...state,
  legs: { ...state.legs, paceMPerS: 0, until: null },
  busyUntilTick: state.tick + Math.round(seconds * TICKS_PER_S),
});
