import { randomFor } from '../random/draw';
import type { GroundPlan } from '../scenario/schema';
import { unitAlong } from './directions';
import { crests, fractal, noiseField, smoothStep } from './octaves';

/** The bare shape of the land before water has worked on it: about 0..1; below 0 is sea. Metres from the south-west corner, margins included. */
export type Relief = (eM: number, nM: number) => number;

/** How the land of a style is worked after its shape is laid down; numbers chosen by eye on hillshaded maps. */
export type Weathering = {
  /** Rounds of rivers cutting down. */
  readonly rounds: number;
  /** How fast rivers cut. */
  readonly cut: number;
  /** Share of the first shape that rises again in each round. */
  readonly uplift: number;
  /** How fast slopes round off, 0..0.2. */
  readonly creep: number;
  /** Fine unevenness, as a share of the relief. */
  readonly detail: number;
};

type Plan = Pick<GroundPlan, 'sizeM' | 'relief'>;
type Frame = { readonly seed: string; readonly sizeM: number; readonly roughness: number };

/** Widest land form in metres: never wider than the map can show. */
const formM = (sizeM: number, wishedM: number): number => Math.min(wishedM, 0.75 * sizeM);

function ridged({ seed, sizeM, roughness }: Frame): Relief {
  const along = unitAlong(180 * randomFor(seed, 'terrain', 100)());
  const [range, bend, mass] = [noiseField(seed, 'terrain', 0), noiseField(seed, 'terrain', 1), noiseField(seed, 'terrain', 2)];
  const waveM = formM(sizeM, 2_300);
  return (eM, nM) => {
    const bentM = 0.28 * waveM * fractal(bend, eM / (1.3 * waveM), nM / (1.3 * waveM), 2, 0.5);
    const u = eM * along.east + nM * along.north + 0.5 * bentM;
    const v = eM * along.north - nM * along.east + bentM;
    const crest = crests(range, u / (2.1 * waveM), v / waveM, 4, 0.32 + 0.22 * roughness);
    return 0.78 * crest + 0.22 * (0.5 + 0.5 * mass(eM / (2.2 * waveM), nM / (2.2 * waveM)));
  };
}

function smooth({ seed, sizeM, roughness }: Frame): Relief {
  const [hills, bend] = [noiseField(seed, 'terrain', 0), noiseField(seed, 'terrain', 1)];
  const waveM = formM(sizeM, 1_900);
  return (eM, nM) => {
    const bent = 0.25 * bend(eM / (1.6 * waveM), nM / (1.6 * waveM));
    return 0.5 + 0.5 * fractal(hills, eM / waveM + bent, nM / waveM - bent, 3, 0.22 + 0.2 * roughness);
  };
}

function plateau({ seed, sizeM, roughness }: Frame): Relief {
  const [mass, bend, top] = [noiseField(seed, 'terrain', 0), noiseField(seed, 'terrain', 1), noiseField(seed, 'terrain', 2)];
  const waveM = formM(sizeM, 2_600);
  return (eM, nM) => {
    const bent = 0.3 * fractal(bend, eM / (0.8 * waveM), nM / (0.8 * waveM), 3, 0.5);
    const rise = fractal(mass, eM / waveM + bent, nM / waveM + bent, 3, 0.4);
    const swell = fractal(top, eM / (0.7 * waveM), nM / (0.7 * waveM), 3, 0.35 + 0.2 * roughness);
    return 0.72 * smoothStep(-0.55, 0.12, rise) + 0.14 * smoothStep(0.12, 0.5, rise) + 0.14 * (0.5 + 0.5 * swell);
  };
}

function dale({ seed, sizeM, roughness }: Frame): Relief {
  const draw = randomFor(seed, 'terrain', 100);
  const along = unitAlong(360 * draw());
  const asideM = sizeM * (0.16 * draw() - 0.08);
  const [meander, fells, spurs] = [noiseField(seed, 'terrain', 0), noiseField(seed, 'terrain', 1), noiseField(seed, 'terrain', 2)];
  const halfM = Math.min(0.5 * sizeM, 1_900);
  return (eM, nM) => {
    const u = (eM - sizeM / 2) * along.east + (nM - sizeM / 2) * along.north;
    const v = (eM - sizeM / 2) * along.north - (nM - sizeM / 2) * along.east - asideM;
    const bentM = 0.26 * halfM * fractal(meander, u / (1.7 * halfM), v / (5 * halfM), 2, 0.4);
    const s = Math.abs(v + bentM) / halfM + 0.1 * fractal(spurs, eM / (0.5 * halfM), nM / (0.5 * halfM), 3, 0.5);
    const side = 0.62 * smoothStep(0.1, 0.62, s) + 0.2 * smoothStep(0.55, 1.5, s);
    const fell =
      0.16 * smoothStep(0.35, 0.9, s) * (0.5 + 0.5 * fractal(fells, eM / (0.55 * halfM), nM / (0.55 * halfM), 3, 0.3 + 0.25 * roughness));
    return side + fell + 0.1 * (u / sizeM + 0.5);
  };
}

function coast({ seed, sizeM, roughness }: Frame): Relief {
  const inland = unitAlong(360 * randomFor(seed, 'terrain', 100)());
  const [shore, hills, cliffs] = [noiseField(seed, 'terrain', 0), noiseField(seed, 'terrain', 1), noiseField(seed, 'terrain', 2)];
  const waveM = formM(sizeM, 1_500);
  return (eM, nM) => {
    const c = ((eM - sizeM / 2) * inland.east + (nM - sizeM / 2) * inland.north) / sizeM + 0.5;
    const inM = (c - 0.24) * sizeM + 0.62 * waveM * fractal(shore, eM / (1.25 * waveM), nM / (1.25 * waveM), 5, 0.38 + 0.14 * roughness);
    if (inM <= 0) return inM / sizeM;
    const cliff = smoothStep(-0.05, 0.45, cliffs(eM / (0.9 * waveM), nM / (0.9 * waveM)));
    const hill = 0.5 + 0.5 * fractal(hills, eM / waveM, nM / waveM, 4, 0.3 + 0.2 * roughness);
    const edge = smoothStep(0, 70, inM) * (0.03 + 0.2 * cliff);
    return (
      0.0005 * Math.min(inM, 40) * 0.2 +
      edge +
      smoothStep(20, 0.8 * sizeM, inM) * (0.25 + 0.55 * hill) +
      0.12 * hill * smoothStep(60, 400, inM)
    );
  };
}

function fen({ seed, sizeM, roughness }: Frame): Relief {
  const draw = randomFor(seed, 'terrain', 100);
  const fall = unitAlong(360 * draw());
  const [isles, flats] = [noiseField(seed, 'terrain', 0), noiseField(seed, 'terrain', 1)];
  const waveM = formM(sizeM, 1_500);
  return (eM, nM) => {
    const tilt = ((eM - sizeM / 2) * fall.east + (nM - sizeM / 2) * fall.north) / sizeM + 0.5;
    const isle = smoothStep(0.22, 0.75, fractal(isles, eM / waveM, nM / waveM, 3, 0.35));
    return (
      0.12 * tilt + 0.1 * (0.5 + 0.5 * fractal(flats, eM / (0.45 * waveM), nM / (0.45 * waveM), 3, 0.3 + 0.3 * roughness)) + 0.78 * isle
    );
  };
}

const SHAPES = { ridged, smooth, plateau, dale, coast, fen } as const;

export function reliefOf(seed: string, { sizeM, relief }: Plan): Relief {
  return SHAPES[relief.style]({ seed, sizeM, roughness: relief.roughness });
}

export function weatheringOf({ relief: { style, roughness } }: Plan): Weathering {
  const rough = (smoothest: number, roughest: number) => smoothest + (roughest - smoothest) * roughness;
  switch (style) {
    case 'ridged':
      return { rounds: 14, cut: rough(0.04, 0.075), uplift: 0.05, creep: rough(0.12, 0.04), detail: rough(0.006, 0.03) };
    case 'smooth':
      return { rounds: 8, cut: rough(0.015, 0.035), uplift: 0.03, creep: rough(0.2, 0.12), detail: rough(0.002, 0.012) };
    case 'plateau':
      return { rounds: 14, cut: rough(0.03, 0.06), uplift: 0.04, creep: rough(0.1, 0.03), detail: rough(0.005, 0.022) };
    case 'dale':
      return { rounds: 10, cut: rough(0.025, 0.05), uplift: 0.04, creep: rough(0.12, 0.05), detail: rough(0.005, 0.02) };
    case 'coast':
      return { rounds: 10, cut: rough(0.03, 0.055), uplift: 0.04, creep: rough(0.12, 0.04), detail: rough(0.005, 0.022) };
    case 'fen':
      return { rounds: 4, cut: rough(0.01, 0.02), uplift: 0.02, creep: rough(0.2, 0.12), detail: rough(0.03, 0.07) };
  }
}
