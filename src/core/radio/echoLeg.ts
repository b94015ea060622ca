import type { MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import type { World } from '../world/world';
import { freeSpaceFieldVPerM, freeSpaceLossDb } from './freeSpace';
import { knifeEdgeDb } from './knifeEdge';
import type { LossBudget, Wave, WaveKind } from './wave';
import { wavelengthM } from './wavelength';
import { directionOf, type Field, fieldPower, minus, type Vector, waveOf } from './waveVector';

/** A point in space as a vector: east, north, height above sea level. */
export const spaceVector = (point: MapPoint, zM: number): Vector => [point.eM, point.nM, zM];

/** How high a point from which a line sends hangs over the ground under it, metres; no lower than 1. */
export const heightOverGroundM = (world: World, at: Vector): number => Math.max(1, at[2] - valueAt(world.groundM, at[0], at[1]));

/** Ends of the leg are left out where they stand on their own ground, metres. */
const CLEAR_OF_END_M = 15;

/** Loss on the way from an echo to the receiver, dB: the worst knife edge of the ground between, 0 in clear view. */
export function secondLegDb(world: World, from: Vector, to: Vector, frequencyMHz: number): number {
  const [east, north, up] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const d = Math.sqrt(east * east + north * north);
  const stepM = Math.max(CLEAR_OF_END_M, world.cellM);
  // v |v| lambda / 2d of the worst edge: the same order as v without a root at every step. Less than J(v) = 0 is not asked for.
  const perSquare = (2 * d) / wavelengthM(frequencyMHz);
  let worst = -(GRAZING_V ** 2) / perSquare;
  const { values, columns, rows, cellM } = world.groundM;
  for (let x = stepM; x < d - CLEAR_OF_END_M; x += stepM) {
    const share = x / d;
    // valueAt in place: called apart it takes half as long again
    const column = Math.min(columns - 1, Math.max(0, (from[0] + east * share) / cellM - 0.5));
    const row = Math.min(rows - 1, Math.max(0, (from[1] + north * share) / cellM - 0.5));
    const [x0, y0] = [Math.min(columns - 2, Math.floor(column)), Math.min(rows - 2, Math.floor(row))];
    const at = y0 * columns + x0;
    const south = values[at]! + (values[at + 1]! - values[at]!) * (column - x0);
    const northM = values[at + columns]! + (values[at + columns + 1]! - values[at + columns]!) * (column - x0);
    const overM = south + (northM - south) * (row - y0) - from[2] - up * share;
    const ends = x * (d - x);
    if (overM * Math.abs(overM) > worst * ends) worst = (overM * Math.abs(overM)) / ends;
  }
  return knifeEdgeDb(Math.sign(worst) * Math.sqrt(Math.abs(worst) * perSquare));
}

/** Knife edges take nothing up to this parameter. @source ITU-R P.526, equation (31) */
const GRAZING_V = 0.78;

/**
 * An echo as a wave: direction from the receiver to where it comes from. Its budget: free space over the whole way, what the first
 * leg lost beyond it (`firstDb`, already parted), the second leg's edges, and the rest as reflection.
 */
export function echoWave(
  kind: WaveKind,
  towards: Vector,
  field: Field,
  wayM: number,
  { first, secondDb }: Legs,
  frequencyMHz: number,
): Wave {
  const { azimuthDeg, elevationDeg } = directionOf(towards);
  const wholeDb = -10 * Math.log10(Math.max(1e-30, fieldPower(field)) / freeSpaceFieldVPerM(wayM) ** 2);
  // causes named one by one: a budget is made for every echo of every pulse
  const { ground = 0, terrain = 0, wood = 0, building, polarization = 0 } = first;
  const known = ground + terrain + wood + (building ?? 0) + (first.reflection ?? 0) + polarization + secondDb;
  const freeSpace = freeSpaceLossDb(wayM, frequencyMHz);
  const budget: LossBudget = { freeSpace, ground, terrain: terrain + secondDb, wood, polarization, reflection: wholeDb - known };
  const lossDb = building === undefined ? budget : { ...budget, building };
  return waveOf(kind, azimuthDeg, elevationDeg, field.re, field.im, lossDb);
}

/** Budget of the way to the echo, and the loss on the way from it, dB. */
export type Legs = { readonly first: LossBudget; readonly secondDb: number };

/** From the receiver to a point, and how far. */
export const sightOf = (receiver: Vector, point: Vector): Vector => minus(point, receiver);
