import { solveInPlace } from '../antenna/linearSystem';
import { type Complex, complex } from '../units/complex';
import { besselJ0, besselY0 } from './besselZero';
import { placeOn, type Wire } from './thinWire';
import { across, along, lengthOfVector, minus, plus } from './waveVector';

/** How a wave meets a bundle: wave number times sine and cosine of its angle to the wires. */
export type Meeting = { readonly across: number; readonly along: number };

/** Wires side by side, with the distance between each two, metres, [one * count + other]; infinite where they do not lie abreast. */
export type Bundle<W extends Wire> = { readonly wires: readonly W[]; readonly gapsM: Float64Array };

export function makeBundle<W extends Wire>(wires: readonly W[]): Bundle<W> {
  const gapsM = new Float64Array(wires.length ** 2).fill(Number.POSITIVE_INFINITY);
  wires.forEach((one, i) => {
    wires.forEach((other, j) => {
      const middle = plus(other.from, along(other.axis, other.lengthM / 2));
      const { alongM } = placeOn(one, middle);
      const aside = across(minus(middle, one.from), one.axis);
      if (i !== j && alongM > 0 && alongM < one.lengthM) gapsM[i * wires.length + j] = Math.max(LEAST_GAP_M, lengthOfVector(aside));
    });
  });
  return { wires, gapsM };
}

/** No two wires hang nearer than this, metres. */
const LEAST_GAP_M = 0.1;

/**
 * The field along each wire of a bundle, its neighbours' scattering included, from the incident field along each at the place
 * `alongM` on the common direction: every wire answers -J0/H0(ka sin b) times what reaches it, and reaches another at a distance d
 * as H0(2)(k d sin b). Without this, wires a wavelength apart or less would add up to 5 dB wrong. Derived for this project; long
 * parallel wires, one angle b for all.
 */
export function coupledFields(
  { wires, gapsM }: Bundle<Wire>,
  incident: readonly Complex[],
  alongM: readonly number[],
  meeting: Meeting,
): readonly Complex[] {
  const n = wires.length;
  if (n < 2) return incident;
  const matrix = new Float64Array(2 * n * n);
  const field = new Float64Array(2 * n);
  for (let j = 0; j < n; j++) {
    // at one place along the wires, where neighbours meet
    const angle = meeting.along * alongM[j]!;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    field[2 * j] = incident[j]!.re * cos - incident[j]!.im * sin;
    field[2 * j + 1] = incident[j]!.re * sin + incident[j]!.im * cos;
    // J0/H0 = J0 (J0 + j Y0) / (J0^2 + Y0^2): what a wire's own field takes of its neighbour's, times H0(2) of the gap
    const x = meeting.across * wires[j]!.radiusM;
    const [j0, y0] = [besselJ0(x), besselY0(x)];
    const by = j0 / (j0 * j0 + y0 * y0);
    for (let i = 0; i < n; i++) {
      const at = 2 * (i * n + j);
      const gap = meeting.across * gapsM[i * n + j]!;
      if (i === j) matrix[at] = 1;
      else if (gap < Number.POSITIVE_INFINITY) {
        const [re, im] = [besselJ0(gap), -besselY0(gap)];
        matrix[at] = by * (j0 * re - y0 * im);
        matrix[at + 1] = by * (j0 * im + y0 * re);
      }
    }
  }
  solveInPlace(matrix, field, n);
  return wires.map((_, j) => {
    const angle = meeting.along * alongM[j]!;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return complex(field[2 * j]! * cos + field[2 * j + 1]! * sin, field[2 * j + 1]! * cos - field[2 * j]! * sin);
  });
}
