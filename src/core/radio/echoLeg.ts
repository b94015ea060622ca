import { distanceM, type MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import type { World } from '../world/world';
import { freeSpaceFieldVPerM, freeSpaceLossDb } from './freeSpace';
import { diffractionParameter, knifeEdgeDb } from './knifeEdge';
import type { LossBudget, Wave, WaveKind } from './wave';
import { directionOf, type Field, fieldPower, minus, type Vector, waveOf } from './waveVector';

/** A point in space as a vector: east, north, height above sea level. */
export const spaceVector = (point: MapPoint, zM: number): Vector => [point.eM, point.nM, zM];

/** Ends of the leg are left out where they stand on their own ground, metres. */
const CLEAR_OF_END_M = 15;

/** Loss on the way from an echo to the receiver, dB: the worst knife edge of the ground between, 0 in clear view. */
export function secondLegDb(world: World, from: Vector, to: Vector, frequencyMHz: number): number {
  const [a, b] = [
    { eM: from[0], nM: from[1] },
    { eM: to[0], nM: to[1] },
  ];
  const d = distanceM(a, b);
  const stepM = Math.max(15, world.cellM);
  let worst = -Infinity;
  for (let x = stepM; x < d - CLEAR_OF_END_M; x += stepM) {
    if (x < CLEAR_OF_END_M) continue;
    const share = x / d;
    const groundM = valueAt(world.groundM, a.eM + (b.eM - a.eM) * share, a.nM + (b.nM - a.nM) * share);
    worst = Math.max(worst, diffractionParameter(groundM - from[2] - (to[2] - from[2]) * share, x, d - x, frequencyMHz));
  }
  return knifeEdgeDb(worst);
}

/**
 * An echo as a wave: direction from the receiver to where it comes from. Its budget: free space over the whole way, what the first
 * leg lost beyond it (`firstDb`, already parted), the second leg's edges, and the rest as reflection.
 */
export function echoWave(kind: WaveKind, towards: Vector, field: Field, wayM: number, legs: Legs, frequencyMHz: number): Wave {
  const { azimuthDeg, elevationDeg } = directionOf(towards);
  const wholeDb = -10 * Math.log10(Math.max(1e-30, fieldPower(field)) / freeSpaceFieldVPerM(wayM) ** 2);
  const { freeSpace: _first, ...first } = legs.first;
  const known = Object.values(first).reduce((sum, part) => sum + part, 0) + legs.secondDb;
  const budget: LossBudget = {
    ...first,
    freeSpace: freeSpaceLossDb(wayM, frequencyMHz),
    terrain: (first.terrain ?? 0) + legs.secondDb,
    reflection: wholeDb - known,
  };
  return waveOf(kind, azimuthDeg, elevationDeg, field.re, field.im, budget);
}

/** Budget of the way to the echo, and the loss on the way from it, dB. */
export type Legs = { readonly first: LossBudget; readonly secondDb: number };

/** From the receiver to a point, and how far. */
export const sightOf = (receiver: Vector, point: Vector): Vector => minus(point, receiver);
