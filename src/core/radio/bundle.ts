import { solveInPlace } from '../antenna/linearSystem';
import { type Complex, complex, exponential, multiply } from '../units/complex';
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
  // at one place along the wires, where neighbours meet
  const turned = (i: number, value: Complex, sign: number) => multiply(value, exponential(complex(0, sign * meeting.along * alongM[i]!)));
  for (let i = 0; i < n; i++) {
    const here = turned(i, incident[i]!, 1);
    field[2 * i] = here.re;
    field[2 * i + 1] = here.im;
    for (let j = 0; j < n; j++) {
      const at = 2 * (i * n + j);
      const { re, im } = i === j ? complex(1) : reach(gapsM[i * n + j]!, wires[j]!.radiusM, meeting.across);
      matrix[at] = re;
      matrix[at + 1] = im;
    }
  }
  solveInPlace(matrix, field, n);
  return wires.map((_, i) => turned(i, complex(field[2 * i]!, field[2 * i + 1]!), -1));
}

/** J0/H0(2) of a wire times H0(2) of the gap: what one wire's own field takes from its neighbour. */
function reach(gapM: number, radiusM: number, acrossPerM: number): Complex {
  if (gapM === Number.POSITIVE_INFINITY) return complex(0);
  const [j0, y0] = [besselJ0(acrossPerM * radiusM), besselY0(acrossPerM * radiusM)];
  const [re, im] = [besselJ0(acrossPerM * gapM), -besselY0(acrossPerM * gapM)];
  // J0/H0 = J0 (J0 + j Y0) / (J0^2 + Y0^2)
  const by = j0 / (j0 * j0 + y0 * y0);
  return complex(by * (j0 * re - y0 * im), by * (j0 * im + y0 * re));
}
