import { gaussRule } from './quadrature';
import type { WireSolution } from './wireSolver';

/**
 * One straight leg as the far field sees it: a phase of its middle times a polynomial in u, the cosine between leg and direction.
 * The polynomial is the power series of the integral of I(s) exp(j k s u): it converges for every u, so nothing is interpolated.
 */
export type RadiatingLeg = {
  /** Wavenumber times the middle's position, radians. */
  readonly phase: readonly [number, number, number];
  readonly along: readonly [number, number, number];
  /** re, im pairs, lowest power first; the squared size is a gain as a power ratio. */
  readonly series: Float64Array;
};

const NEGLIGIBLE = 1e-8;
const FREE_SPACE_OHM = 376.730313668;

/**
 * Radiating legs of a solution, scaled so that the squared far field is the gain over isotropic for the power fed in. The far
 * field's own factor -j is left out: it is common to all directions.
 * @throws RangeError where the drives feed in no net power
 */
export function radiatingLegs(solution: WireSolution): RadiatingLeg[] {
  const { mesh, wavenumber, inputW } = solution;
  if (!(inputW > 0)) throw new RangeError('the drives feed in no power: no gain can be stated');
  const scale = wavenumber * Math.sqrt(FREE_SPACE_OHM / (8 * Math.PI * inputW));
  return mesh.legs.map((leg, number) => {
    const middle = leg.start.map((from, axis) => wavenumber * (from + (leg.lengthM / 2) * leg.along[axis]!));
    const series = seriesOf(solution, number, scale);
    return { phase: [middle[0]!, middle[1]!, middle[2]!] as const, along: leg.along, series };
  });
}

/** Coefficient n is (j k h)^n / n! times the moment of (s / h)^n over the current, s from the middle, h half the leg. */
function seriesOf(solution: WireSolution, leg: number, scale: number): Float64Array {
  const { mesh, wavenumber } = solution;
  const { start, lengthM } = mesh.legs[leg]!;
  const half = lengthM / 2;
  const order = orderFor(wavenumber * half);
  const series = new Float64Array(2 * order + 2);
  const ends = endCurrents(solution);
  mesh.segments.forEach((segment, p) => {
    if (segment.leg !== leg) return;
    const fromM = Math.hypot(segment.start[0] - start[0], segment.start[1] - start[1], segment.start[2] - start[2]) - half;
    const rule = gaussRule(10);
    rule.nodes.forEach((node, i) => {
      const s = (segment.lengthM * (1 + node)) / 2;
      const weight = (scale * segment.lengthM * rule.weights[i]!) / 2 / Math.sin(wavenumber * segment.lengthM);
      const startShare = weight * Math.sin(wavenumber * (segment.lengthM - s));
      const endShare = weight * Math.sin(wavenumber * s);
      let re = startShare * ends[4 * p]! + endShare * ends[4 * p + 2]!;
      let im = startShare * ends[4 * p + 1]! + endShare * ends[4 * p + 3]!;
      for (let n = 0; n <= order; n++) {
        series[2 * n]! += re;
        series[2 * n + 1]! += im;
        const step = (wavenumber * (fromM + s)) / (n + 1);
        [re, im] = [-im * step, re * step];
      }
    });
  });
  return series;
}

/** Current at both ends of every segment: four numbers each, start re, im, end re, im. */
function endCurrents({ mesh, modeCurrents }: WireSolution): Float64Array {
  const ends = new Float64Array(4 * mesh.segments.length);
  mesh.modes.forEach(({ before, after }, mode) => {
    ends[4 * before + 2] = modeCurrents[2 * mode]!;
    ends[4 * before + 3] = modeCurrents[2 * mode + 1]!;
    ends[4 * after] = modeCurrents[2 * mode]!;
    ends[4 * after + 1] = modeCurrents[2 * mode + 1]!;
  });
  return ends;
}

/** The power after which the series of exp(j x) is done. */
function orderFor(x: number): number {
  let order = 2;
  for (let term = (x * x) / 2; term > NEGLIGIBLE || order < x; order++) term *= x / (order + 1);
  return order;
}
