import type { Complex } from '../units/complex';
import { surfaceTerm } from './ground';
import { makeHeightGrid } from './heightGrid';
import { clearTopM, type FlatGround, flattenedGround, fresnelZoneM } from './marchGround';
import { startAngle, startField } from './marchStart';
import { makeTerrainMarch } from './terrainMarch';
import { wavelengthM, waveNumber } from './wavelength';

/** Ground along a line from the transmitter. Points in metres from it, strictly rising from 0; facet i runs from point i to i + 1. */
export type FieldRequest = {
  readonly frequencyMHz: number;
  readonly txHeightM: number;
  readonly distancesM: ArrayLike<number>;
  readonly heightsM: ArrayLike<number>;
  /** Complex permittivities in use, and which of them each facet has (all the first when absent). */
  readonly permittivities: readonly Complex[];
  readonly groundOf?: ArrayLike<number>;
  readonly outHeightsM: readonly number[];
  readonly earthRadiusM?: number;
};

/**
 * Excess loss over free space over the horizontal distance, dB, [point * heights + height]; NaN for points nearer than START_M.
 */
export type FieldResult = { readonly vDb: Float32Array; readonly hDb: Float32Array; readonly warnings: readonly string[] };

/** Steepest slope for which the narrow-angle form is sound: 20 degrees. */
const STEEP = Math.tan((20 * Math.PI) / 180);

/**
 * Field over hilly ground by the two-dimensional narrow-angle parabolic equation, marched outward from the transmitter.
 * @source A. Beilis and F. D. Tappert, J. Acoust. Soc. Am. 66 (1979), shift map; M. Levy, Parabolic Equation Methods (2000): from memory
 */
export function terrainField(request: FieldRequest): FieldResult {
  const { frequencyMHz, outHeightsM } = request;
  const ground = flattenedGround(request);
  const begin = ground.begin;
  const topM = clearTopM(
    ground,
    request.txHeightM,
    Math.max(request.txHeightM + startAngle(frequencyMHz) * ground.xM[begin]!, ...outHeightsM),
    frequencyMHz,
  );
  const grid = makeHeightGrid({
    clearTopM: topM,
    layerM: 3 * fresnelZoneM(ground, frequencyMHz),
    spacingM: Math.min(0.28, 0.22 / startAngle(frequencyMHz)) * wavelengthM(frequencyMHz),
    frequencyMHz,
  });
  const march = makeTerrainMarch(grid, waveNumber(frequencyMHz));
  const terms = request.permittivities.map((eps) => ({ v: surfaceTerm(eps, 'v'), h: surfaceTerm(eps, 'h') }));
  const termOf = (facet: number) => terms[request.groundOf?.[ground.facet[facet]!] ?? 0]!;
  const out = makeReadOut(request, grid.zM, ground);
  let slope = startField(march.field, grid.zM, ground, { ...request, topM, terms: termOf(0) });
  let steepest = 0;
  out.read(march.field, begin);
  for (let i = begin; i + 1 < ground.xM.length; i++) {
    const lengthM = ground.xM[i + 1]! - ground.xM[i]!;
    const next = (ground.zM[i + 1]! - ground.zM[i]!) / lengthM;
    steepest = Math.max(steepest, Math.abs(next));
    march.bend(next - slope);
    slope = next;
    const count = Math.ceil(lengthM / longestStepM(ground.xM[i]!, topM, frequencyMHz) - 1e-9);
    march.setStep(lengthM / count);
    const term = termOf(i);
    march.setGround(term.v, term.h);
    march.advance(count);
    out.read(march.field, i + 1);
  }
  return { vDb: out.vDb, hDb: out.hDb, warnings: steepest > STEEP ? [steepWarning(steepest)] : [] };
}

/** Six wavelengths, less near the start, where waves steeper than the ground are still under way: phase a step k theta^2 dx / 2 below 4. */
function longestStepM(xM: number, topM: number, frequencyMHz: number): number {
  const steepest = Math.min(startAngle(frequencyMHz), (2 * topM) / xM);
  return wavelengthM(frequencyMHz) * Math.min(6, 1.2 / steepest ** 2);
}

const steepWarning = (slope: number): string =>
  `ground as steep as ${Math.round((Math.atan(slope) * 180) / Math.PI)} degrees along the path: beyond 20 degrees the terrain field is less sure`;

type ReadOut = { readonly vDb: Float32Array; readonly hDb: Float32Array; readonly read: (field: Float64Array, at: number) => void };

/** Takes levels off the field at the wished heights, linear between nodes. */
function makeReadOut({ outHeightsM, distancesM }: FieldRequest, zM: Float64Array, ground: FlatGround): ReadOut {
  const heights = outHeightsM.length;
  const vDb = new Float32Array(distancesM.length * heights).fill(Number.NaN);
  const hDb = new Float32Array(distancesM.length * heights).fill(Number.NaN);
  const nodes = outHeightsM.map((heightM) => {
    let node = 0;
    while (node < zM.length - 2 && zM[node + 1]! < heightM) node++;
    return node;
  });
  function read(field: Float64Array, at: number): void {
    const point = ground.point[at]!;
    if (point < 0) return;
    const spreadDb = 10 * Math.log10(ground.xM[at]! / ground.xM[ground.begin]!);
    for (let s = 0; s < heights; s++) {
      const node = nodes[s]!;
      const share = (outHeightsM[s]! - zM[node]!) / (zM[node + 1]! - zM[node]!);
      vDb[point * heights + s] = -levelDb(field, 4 * node, share) - spreadDb;
      hDb[point * heights + s] = -levelDb(field, 4 * node + 2, share) - spreadDb;
    }
  }
  return { vDb, hDb, read };
}

function levelDb(field: Float64Array, at: number, share: number): number {
  const re = field[at]! + (field[at + 4]! - field[at]!) * share;
  const im = field[at + 1]! + (field[at + 5]! - field[at + 1]!) * share;
  return 10 * Math.log10(Math.max(1e-30, re * re + im * im));
}
