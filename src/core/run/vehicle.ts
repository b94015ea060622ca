import { antennaById } from '../antenna/catalogue';
import type { AntennaId, Scenario } from '../scenario/schema';
import { distanceM, type MapPoint } from '../units/frames';
import type { RunState } from './state';

/** At the vehicle is within this of it: as far as an arm and a long antenna reach about it. */
export const AT_VEHICLE_M = 10;

export const isAtVehicle = ({ vehicle, at }: Pick<RunState, 'vehicle' | 'at'>): boolean =>
  vehicle !== null && (vehicle.aboard || distanceM(vehicle.at, at) <= AT_VEHICLE_M);

/** A long antenna is taken up and put away at the vehicle only, and drives off with it; where an exercise has none it is changed anywhere. */
export function canChangeTo({ limits }: Pick<Scenario, 'limits'>, state: RunState, antenna: AntennaId): boolean {
  const { onFoot } = antennaById(antenna);
  if (state.vehicle === null) return onFoot || !limits.vehicle;
  return isAtVehicle(state) || (onFoot && antennaById(state.hold.antenna).onFoot);
}

/** The vehicle drives off: whoever sits in it is set down, and a long antenna goes with it where the kit has another. */
export function withoutVehicle({ kit }: Pick<Scenario, 'kit'>, state: RunState): RunState {
  const antenna = antennaById(state.hold.antenna).onFoot ? null : (kit.antennas.find((id) => antennaById(id).onFoot) ?? null);
  const hold = antenna === null ? state.hold : { ...state.hold, antenna, rollDeg: antennaById(antenna).takenUpRollDeg };
  return { ...state, hold, vehicle: null, legs: { ...state.legs, paceMPerS: 0, until: null } };
}

/** Would this step carry an antenna away from the vehicle that is not for walking? */
export const carriesOff = ({ vehicle, hold }: Pick<RunState, 'vehicle' | 'hold'>, to: MapPoint): boolean =>
  vehicle !== null && !vehicle.aboard && !antennaById(hold.antenna).onFoot && distanceM(vehicle.at, to) > AT_VEHICLE_M;

export function boarded(state: RunState): RunState {
  if (!state.vehicle || state.vehicle.aboard || !isAtVehicle(state)) return state;
  const { at } = state.vehicle;
  return { ...state, at, vehicle: { at, aboard: true }, legs: { ...state.legs, paceMPerS: 0, until: null } };
}

export function left(state: RunState): RunState {
  if (!state.vehicle?.aboard) return state;
  return { ...state, vehicle: { at: state.at, aboard: false }, legs: { ...state.legs, paceMPerS: 0, until: null } };
}
