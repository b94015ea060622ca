import type { Complex } from '../units/complex';
import { terrainField } from './terrainField';

/** Everything a worker needs to compute one radial: plain data, typed arrays that may be transferred. */
export type RadialRequest = {
  /** Which radial: azimuth in half degrees, 0 to 719. */
  readonly index: number;
  readonly frequencyMHz: number;
  readonly txHeightM: number;
  readonly stepM: number;
  readonly groundM: Float32Array;
  /** Class number of each facet, into `permittivities`. */
  readonly groundOf: Uint8Array;
  readonly permittivities: readonly Complex[];
  readonly heightsM: readonly number[];
};

/** Excess over free space at the horizontal distance, dB, [range * heights + height]; range i stands at i steps. */
export type RadialResult = {
  readonly index: number;
  readonly stepM: number;
  readonly vDb: Float32Array;
  readonly hDb: Float32Array;
  readonly warnings: readonly string[];
};

/** Computes one radial. Pure: the same request gives the same numbers wherever it runs. */
export function computeRadial(request: RadialRequest): RadialResult {
  const { index, stepM, groundM, heightsM } = request;
  const field = terrainField({
    ...request,
    distancesM: Float64Array.from(groundM, (_, i) => i * stepM),
    heightsM: groundM,
    outHeightsM: heightsM,
  });
  fillBeforeStart(field.vDb, heightsM.length);
  fillBeforeStart(field.hDb, heightsM.length);
  return { index, stepM, vDb: field.vDb, hDb: field.hDb, warnings: field.warnings };
}

/** Points nearer than the start take the first computed value: the flat-earth field has the answer there, only NaN must not spread. */
function fillBeforeStart(db: Float32Array, heights: number): void {
  let first = 0;
  while (Number.isNaN(db[first * heights]!)) first++;
  for (let i = 0; i < first; i++) for (let h = 0; h < heights; h++) db[i * heights + h] = db[first * heights + h]!;
}
