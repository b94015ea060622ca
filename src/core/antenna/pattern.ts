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

/** Sums the legs for one direction. Hot: a full ring of headings calls it some thousand times, so the legs lie in one flat array. */
function fieldOf(legs: readonly RadiatingLeg[]): Pattern['fieldInto'] {
  const { phases, alongs, starts, series } = flattened(legs);
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
      for (let i = starts[leg + 1]! - 2; i >= starts[leg]!; i -= 2) {
        re = re * u + series[i]!;
        im = im * u + series[i + 1]!;
      }
      const phase = phases[at]! * x + phases[at + 1]! * y + phases[at + 2]! * z;
      const c = Math.cos(phase);
      const s = Math.sin(phase);
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

function flattened(legs: readonly RadiatingLeg[]) {
  const starts = new Int32Array(legs.length + 1);
  legs.forEach((leg, i) => {
    starts[i + 1] = starts[i]! + leg.series.length;
  });
  const series = new Float64Array(starts[legs.length]!);
  legs.forEach((leg, i) => {
    series.set(leg.series, starts[i]!);
  });
  const phases = Float64Array.from(legs.flatMap((leg) => [...leg.phase]));
  const alongs = Float64Array.from(legs.flatMap((leg) => [...leg.along]));
  return { phases, alongs, starts, series };
}
