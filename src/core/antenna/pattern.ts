import { toDb } from '../units/decibels';
import type { Pattern } from './antenna';
import { type RadiatingLeg, radiatingLegs } from './farField';
import type { WireChain } from './wireChain';
import { type SolverOptions, solveWires } from './wireSolver';

/** Solves wires and gives their lossless vector pattern. Errors are those of `solveWires`. */
export function patternOf(chains: readonly WireChain[], frequencyMHz: number, options: SolverOptions = {}): Pattern {
  const solution = solveWires(chains, frequencyMHz, options);
  const fieldInto = fieldOf(radiatingLegs(solution));
  const ahead = new Float64Array(4);
  fieldInto(1, 0, 0, ahead);
  return { frequencyMHz, fieldInto, forwardDbi: toDb(powerOf(ahead)), impedanceOhm: solution.impedanceOhm };
}

/** Gain as a power ratio of a field written by `fieldInto`. */
export function powerOf(field: Float64Array): number {
  return field[0]! ** 2 + field[1]! ** 2 + field[2]! ** 2 + field[3]! ** 2;
}

const [S3, S5, S7, S9, S11] = [-1 / 6, 1 / 120, -1 / 5040, 1 / 362_880, -1 / 39_916_800];
const [C2, C4, C6, C8, C10, C12] = [-1 / 2, 1 / 24, -1 / 720, 1 / 40_320, -1 / 3_628_800, 1 / 479_001_600];

/** Sums the legs for one direction. Hot: a full ring of headings calls it some thousand times, so the legs lie in one flat array. */
function fieldOf(legs: readonly RadiatingLeg[]): Pattern['fieldInto'] {
  const { phases, alongs, starts, series, even } = flattened(legs);
  const count = legs.length;
  return (x, y, z, out) => {
    let xRe = 0;
    let xIm = 0;
    let yRe = 0;
    let yIm = 0;
    let zRe = 0;
    let zIm = 0;
    for (let leg = 0; leg < count; leg++) {
      const at = 3 * leg;
      const ax = alongs[at]!;
      const ay = alongs[at + 1]!;
      const az = alongs[at + 2]!;
      const u = ax * x + ay * y + az * z;
      let re = 0;
      let im = 0;
      const by = even[leg] === 1 ? u * u : u;
      for (let i = starts[leg + 1]! - 2; i >= starts[leg]!; i -= 2) {
        re = re * by + series[i]!;
        im = im * by + series[i + 1]!;
      }
      const phase = phases[at]! * x + phases[at + 1]! * y + phases[at + 2]! * z;
      // cos and sin together, from one reduction to an eighth turn and two Taylor series: twice as fast here, right to 1e-11
      const quarter = Math.round(phase * (2 / Math.PI));
      const r = phase - quarter * (Math.PI / 2);
      const r2 = r * r;
      const sine = r * (1 + r2 * (S3 + r2 * (S5 + r2 * (S7 + r2 * (S9 + r2 * S11)))));
      const cosine = 1 + r2 * (C2 + r2 * (C4 + r2 * (C6 + r2 * (C8 + r2 * (C10 + r2 * C12)))));
      const swapped = (quarter & 1) === 1;
      const c = ((quarter + 1) & 2) === 2 ? -(swapped ? sine : cosine) : swapped ? sine : cosine;
      const s = (quarter & 2) === 2 ? -(swapped ? cosine : sine) : swapped ? cosine : sine;
      const turnedRe = re * c - im * s;
      const turnedIm = re * s + im * c;
      xRe += ax * turnedRe;
      xIm += ax * turnedIm;
      yRe += ay * turnedRe;
      yIm += ay * turnedIm;
      zRe += az * turnedRe;
      zIm += az * turnedIm;
    }
    const across = Math.sqrt(x * x + y * y);
    const cosPhi = across > 1e-12 ? x / across : 1;
    const sinPhi = across > 1e-12 ? y / across : 0;
    out[0] = z * (cosPhi * xRe + sinPhi * yRe) - across * zRe;
    out[1] = z * (cosPhi * xIm + sinPhi * yIm) - across * zIm;
    out[2] = cosPhi * yRe - sinPhi * xRe;
    out[3] = cosPhi * yIm - sinPhi * xIm;
  };
}

/** A rod fed in its middle has an even series: only those coefficients are kept, half the work. */
function flattened(legs: readonly RadiatingLeg[]) {
  const even = Uint8Array.from(legs, (leg) => (isEven(leg.series) ? 1 : 0));
  const kept = legs.map(({ series }, i) => (even[i] === 1 ? series.filter((_, at) => at % 4 < 2) : series));
  const starts = new Int32Array(legs.length + 1);
  kept.forEach((coefficients, i) => {
    starts[i + 1] = starts[i]! + coefficients.length;
  });
  const series = new Float64Array(starts[legs.length]!);
  kept.forEach((coefficients, i) => {
    series.set(coefficients, starts[i]!);
  });
  const phases = Float64Array.from(legs.flatMap((leg) => [...leg.phase]));
  const alongs = Float64Array.from(legs.flatMap((leg) => [...leg.along]));
  return { phases, alongs, starts, series, even };
}

function isEven(series: Float64Array): boolean {
  const most = series.reduce((size, value) => Math.max(size, Math.abs(value)), 0);
  return series.every((value, at) => at % 4 < 2 || Math.abs(value) < 1e-9 * most);
}
