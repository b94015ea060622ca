import { scatterRays } from '../../core/radio/localScatter';

const MHZ = 150;
const LAMBDA_M = 299.792458 / MHZ;

/** Complex sum of the scatter rays at a place. */
function sumAt(tagKey: number, eM: number, nM: number): { re: number; im: number } {
  let [re, im] = [0, 0];
  for (const ray of scatterRays({ tagKey, eM, nM, frequencyMHz: MHZ })) {
    re += ray.amplitude.re;
    im += ray.amplitude.im;
  }
  return { re, im };
}

/** Correlation of the complex fading between places `apart` wavelengths from each other, over seeds. */
export function fadingCorrelation(apart: number, seeds = 3000): number {
  let [crossed, power] = [0, 0];
  for (let seed = 0; seed < seeds; seed++) {
    const a = sumAt(seed, 105, 105);
    const turn = seed * 2.399963;
    const b = sumAt(seed, 105 + apart * LAMBDA_M * Math.sin(turn), 105 + apart * LAMBDA_M * Math.cos(turn));
    crossed += a.re * b.re + a.im * b.im;
    power += (a.re ** 2 + a.im ** 2 + b.re ** 2 + b.im ** 2) / 2;
  }
  return crossed / power;
}

/** Points a wavelength: a fade below -20 dB is 0.04 wavelength long on average, and short ones must not be stepped over. */
const PER_WAVELENGTH = 160;

/** Power along straight walks of the scatter, one list a walk. */
let walked: readonly Float64Array[] | undefined;

function powersWalked(wavelengths: number): readonly Float64Array[] {
  const walks = 10;
  const stepM = LAMBDA_M / PER_WAVELENGTH;
  walked ??= Array.from({ length: walks }, (_, walk) =>
    Float64Array.from({ length: Math.round((wavelengths * PER_WAVELENGTH) / walks) }, (_, i) => {
      const turn = walk * 0.7;
      const { re, im } = sumAt(900 + walk, 500 + i * stepM * Math.cos(turn), 500 + i * stepM * Math.sin(turn));
      return re * re + im * im;
    }),
  );
  return walked;
}

/** Crossings per wavelength and mean length of fades in wavelengths below a level re the mean power, on 1000 wavelengths of straight walks. */
export function fadesBelow(levelDb: number): { readonly crossings: number; readonly meanLength: number } {
  const walks = powersWalked(1000);
  const points = walks.reduce((sum, walk) => sum + walk.length, 0);
  const mean = walks.reduce((sum, walk) => walk.reduce((s, p) => s + p, sum), 0) / points;
  const least = mean * 10 ** (levelDb / 10);
  let [crossings, below] = [0, 0];
  for (const walk of walks)
    walk.forEach((p, i) => {
      if (p < least) below++;
      if (i > 0 && walk[i - 1]! >= least && p < least) crossings++;
    });
  return { crossings: (crossings / points) * PER_WAVELENGTH, meanLength: below / PER_WAVELENGTH / Math.max(1, crossings) };
}
