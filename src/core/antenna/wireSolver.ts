import { toRad } from '../units/angles';
import { solveInPlace } from './linearSystem';
import { parallelCoupling } from './parallelCoupling';
import { type Mesh, meshOf, type Segment } from './segments';
import { skewCoupling } from './skewCoupling';
import type { WireChain } from './wireChain';

/** The currents on a set of wires, ready for their far field. Amplitudes are peak values, exp(+j omega t). */
export type WireSolution = {
  readonly mesh: Mesh;
  readonly wavenumber: number;
  /** re, im pairs, amperes, one per mode of the mesh. */
  readonly modeCurrents: Float64Array;
  /** Mean power into all gaps together, watts. */
  readonly inputW: number;
  /** What the first driven chain's gap sees with all drives on, ohms. */
  readonly impedanceOhm: readonly [number, number];
};

export type SolverOptions = {
  /** Segments on a rod; even. 8 unless said, more does not change a sensible antenna. */
  readonly segmentsPerRod?: number;
  /** True unless said: free ends lengthened by a share of the radius. */
  readonly lengthenEnds?: boolean;
};

export const LIGHT_MHZ_M = 299.792458;

/**
 * Thin-wire method of moments in free space: piecewise-sinusoidal currents, the same functions as weights (Galerkin; Richmond and
 * Geary, IEEE Trans. Antennas Propag. AP-18 (1970) 763, from memory), the wire's radius as the least distance.
 * @throws RangeError for wires without length or drive, and for coinciding wires
 */
export function solveWires(chains: readonly WireChain[], frequencyMHz: number, options: SolverOptions = {}): WireSolution {
  if (!(frequencyMHz > 0)) throw new RangeError(`need a frequency above 0, got ${frequencyMHz} MHz`);
  const wavelengthM = LIGHT_MHZ_M / frequencyMHz;
  const wavenumber = (2 * Math.PI) / wavelengthM;
  const mesh = meshOf(chains, wavelengthM, options.segmentsPerRod ?? 8, options.lengthenEnds ?? true);
  const voltages = new Float64Array(2 * mesh.modes.length);
  let firstDriven = -1;
  chains.forEach(({ drive }, i) => {
    const mode = mesh.drivenModes[i]!;
    if (!drive || mode < 0) return;
    if (firstDriven < 0) firstDriven = mode;
    voltages[2 * mode] = drive.amplitude * Math.cos(toRad(drive.phaseDeg));
    voltages[2 * mode + 1] = drive.amplitude * Math.sin(toRad(drive.phaseDeg));
  });
  if (firstDriven < 0) throw new RangeError('no wire is driven');
  const modeCurrents = voltages.slice();
  solveInPlace(impedanceMatrix(mesh, wavenumber), modeCurrents, mesh.modes.length);
  return { mesh, wavenumber, modeCurrents, ...atGaps(voltages, modeCurrents, firstDriven) };
}

function atGaps(voltages: Float64Array, currents: Float64Array, first: number): Pick<WireSolution, 'inputW' | 'impedanceOhm'> {
  let inputW = 0;
  for (let i = 0; i < voltages.length; i++) inputW += (voltages[i]! * currents[i]!) / 2;
  const [vRe, vIm, iRe, iIm] = [voltages[2 * first]!, voltages[2 * first + 1]!, currents[2 * first]!, currents[2 * first + 1]!];
  const size2 = iRe * iRe + iIm * iIm;
  return { inputW, impedanceOhm: [(vRe * iRe + vIm * iIm) / size2, (vIm * iRe - vRe * iIm) / size2] };
}

/**
 * Mode against mode, ohms: re, im pairs row by row, filled by segment pairs. Between two chains one half is mirrored into the other;
 * within a chain both orders are computed, because a segment pair alone is not symmetric, only a pair of whole modes is.
 */
export function impedanceMatrix(mesh: Mesh, wavenumber: number): Float64Array {
  const n = mesh.modes.length;
  const matrix = new Float64Array(2 * n * n);
  const shares = sharesOf(mesh);
  const four = new Float64Array(8);
  const chainCount = mesh.chainStarts.length - 1;
  for (let one = 0; one < chainCount; one++) {
    for (let other = one; other < chainCount; other++) {
      const couple = allParallel(mesh, one, other) ? parallelCoupling : skewCoupling;
      for (let p = mesh.chainStarts[one]!; p < mesh.chainStarts[one + 1]!; p++) {
        for (let q = mesh.chainStarts[other]!; q < mesh.chainStarts[other + 1]!; q++) {
          couple(mesh.segments[p]!, mesh.segments[q]!, wavenumber, four);
          addPair(matrix, n, shares, p, q, four, one !== other);
        }
      }
    }
  }
  return matrix;
}

/** For segment p and its end e, shares[2 p + e] is the mode that is 1 there, -1 at a free end. */
function sharesOf(mesh: Mesh): Int32Array {
  const shares = new Int32Array(2 * mesh.segments.length).fill(-1);
  mesh.modes.forEach(({ before, after }, mode) => {
    shares[2 * before + 1] = mode;
    shares[2 * after] = mode;
  });
  return shares;
}

function addPair(matrix: Float64Array, n: number, shares: Int32Array, p: number, q: number, four: Float64Array, mirrored: boolean): void {
  for (let combination = 0; combination < 4; combination++) {
    const row = shares[2 * p + (combination >> 1)]!;
    const col = shares[2 * q + (combination & 1)]!;
    if (row < 0 || col < 0) continue;
    matrix[2 * (row * n + col)]! += four[2 * combination]!;
    matrix[2 * (row * n + col) + 1]! += four[2 * combination + 1]!;
    if (!mirrored) continue;
    matrix[2 * (col * n + row)]! += four[2 * combination]!;
    matrix[2 * (col * n + row) + 1]! += four[2 * combination + 1]!;
  }
}

/** May the shorter formula be used for all segments of two chains? Both must be straight and parallel. */
function allParallel(mesh: Mesh, one: number, other: number): boolean {
  const reference = mesh.segments[mesh.chainStarts[one]!]!.along;
  const isParallel = ({ along }: Segment) => {
    const dot = along[0] * reference[0] + along[1] * reference[1] + along[2] * reference[2];
    return Math.abs(dot) > 1 - 1e-12;
  };
  const [a, b, c, d] = [mesh.chainStarts[one]!, mesh.chainStarts[one + 1]!, mesh.chainStarts[other]!, mesh.chainStarts[other + 1]!];
  return mesh.segments.slice(a, b).every(isParallel) && mesh.segments.slice(c, d).every(isParallel);
}
