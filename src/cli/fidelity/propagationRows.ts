import { planeEarthLossDb } from '../../core/radio/flatEarth';
import { fieldStrengthDbuVPerM, freeSpaceLossDb, fresnelRadiusM, nearFieldRadial, nearFieldTransverse } from '../../core/radio/freeSpace';
import {
  fresnelCoefficient,
  GROUND,
  minimumEffectiveHeightM,
  type Polarization,
  permittivity,
  pseudoBrewsterRad,
  roughnessFactor,
} from '../../core/radio/ground';
import { knifeEdgeDb, knifeEdgeExactDb } from '../../core/radio/knifeEdge';
import { galacticNoiseDb, manMadeNoiseDb } from '../../core/radio/noise';
import { roundedObstacleDb } from '../../core/radio/roundedObstacle';
import { LIGHT_M_MHZ } from '../../core/radio/wavelength';
import { woodlandLossDb } from '../../core/radio/woodland';
import { toDeg, toRad } from '../../core/units/angles';
import { magnitude } from '../../core/units/complex';
import { echoRows } from './echoRows';
import { flatGain, sommerfeldWorstDb } from './flatEarthTrials';
import { type CheckRow, rows } from './row';
import { flatGroundWorstDb, hillsRmsDb, swappedDb, wedgeWorstDb } from './terrainTrials';

const SPACE: readonly CheckRow[] = [
  ...rows({ unit: 'dB', tolerance: 1e-4, mark: 'P', source: 'ITU-R P.525' }, [
    ['free space: 1 km at 150 MHz', () => freeSpaceLossDb(1000, 150), 75.96961],
    ['free space: 10 m at 150 MHz', () => freeSpaceLossDb(10, 150), 35.96961],
    ['free space: 1 km at 433.92 MHz', () => freeSpaceLossDb(1000, 433.92), 85.19598],
    ['free space: 10 km at 30 MHz', () => freeSpaceLossDb(10_000, 30), 81.99021],
    ['10 dBm e.i.r.p. at 1 km, dB over 1 uV/m', () => fieldStrengthDbuVPerM(10, 1000), 54.77121],
  ]),
  ...rows({ unit: 'm', tolerance: 1e-4, mark: 'P', source: 'ITU-R P.526, first Fresnel zone' }, [
    ['Fresnel radius: 500 + 500 m at 150 MHz', () => fresnelRadiusM(500, 500, 150), 22.35294],
    ['Fresnel radius: 100 + 900 m at 150 MHz', () => fresnelRadiusM(100, 900, 150), 13.41177],
    ['Fresnel radius: 2.5 + 2.5 km at 40 MHz', () => fresnelRadiusM(2500, 2500, 40), 96.79109],
  ]),
  ...rows({ unit: '', tolerance: 1e-6, mark: 'D', source: 'field of a short dipole, computed independently for this project' }, [
    ['dipole near field at kr = pi: transverse', () => magnitude(nearFieldTransverse(LIGHT_M_MHZ / 300, 150)), 0.95338597],
    ['dipole near field at kr = pi: radial', () => magnitude(nearFieldRadial(LIGHT_M_MHZ / 300, 150)), 0.6680933],
  ]),
];

const EDGES: readonly CheckRow[] = [
  ...rows(
    { unit: 'dB', tolerance: 1e-5, mark: 'P', source: 'ITU-R P.526, Fresnel integral' },
    (
      [
        [-1, -1.00104604],
        [-0.5, 1.85862396],
        [0, 6.02059991],
        [1, 13.86410541],
        [2, 19.09096238],
        [5, 26.93619794],
      ] as const
    ).map(([v, db]) => [`knife edge, exact integral: v = ${v}`, () => knifeEdgeExactDb(v), db] as const),
  ),
  ...rows({ unit: 'dB', tolerance: 1e-6, mark: 'P', source: 'ITU-R P.526, closed form J(v)' }, [
    ['knife edge, closed form: v = 0', () => knifeEdgeDb(0), 6.03285221],
    ['knife edge, closed form: v = 1', () => knifeEdgeDb(1), 13.92572893],
    ['knife edge, closed form: v = 2', () => knifeEdgeDb(2), 19.04285951],
    ['knife edge, closed form: nothing at v = -0.78', () => knifeEdgeDb(-0.78), 0],
  ]),
  ...rows({ unit: 'dB', tolerance: 1e-3, mark: 'P', source: 'ITU-R P.526, rounded obstacle' }, [
    [
      'rounded top 20 m, 1 + 1 km, R 50 m, 150 MHz',
      () => roundedObstacleDb({ heightM: 20, d1M: 1000, d2M: 1000, radiusM: 50 }, 150),
      16.43569,
    ],
    [
      'rounded top 20 m, 1 + 1 km, R 500 m, 150 MHz',
      () => roundedObstacleDb({ heightM: 20, d1M: 1000, d2M: 1000, radiusM: 500 }, 150),
      20.11477,
    ],
    [
      'rounded top 10 m, 2 + 2 km, R 1 km, 72 MHz',
      () => roundedObstacleDb({ heightM: 10, d1M: 2000, d2M: 2000, radiusM: 1000 }, 72),
      11.35859,
    ],
  ]),
];

const MEDIUM = permittivity(GROUND['medium-dry'], 150);
const WET = permittivity(GROUND.wet, 150);
const WATER = permittivity(GROUND['fresh-water'], 150);
const reflected = (eps: typeof MEDIUM, pol: Polarization, deg: number) => fresnelCoefficient(eps, pol, Math.sin(toRad(deg)));

const GROUND_ROWS: readonly CheckRow[] = [
  ...rows({ unit: '', tolerance: 1e-6, mark: 'P', source: 'ITU-R P.527, Fresnel coefficients (classes from memory)' }, [
    ['medium dry, 5 degrees, H, real part', () => reflected(MEDIUM, 'h', 5).re, -0.95448702],
    ['medium dry, 5 degrees, H, imaginary part', () => reflected(MEDIUM, 'h', 5).im, 0.00019025],
    ['medium dry, 5 degrees, V, real part', () => reflected(MEDIUM, 'v', 5).re, -0.48224003],
    ['medium dry, 5 degrees, V, imaginary part', () => reflected(MEDIUM, 'v', 5).im, -0.00142415],
    ['medium dry, 15 degrees, V, real part', () => reflected(MEDIUM, 'v', 15).re, 0.01725958],
    ['medium dry, 15 degrees, V, imaginary part', () => reflected(MEDIUM, 'v', 15).im, -0.00186418],
    ['fresh water, 5 degrees, V, real part', () => reflected(WATER, 'v', 5).re, -0.12080678],
    ['fresh water, 5 degrees, V, imaginary part', () => reflected(WATER, 'v', 5).im, -0.00109314],
  ]),
  ...rows({ unit: 'degrees', tolerance: 1e-6, mark: 'P', source: 'ITU-R P.527, pseudo-Brewster angle' }, [
    ['pseudo-Brewster angle over medium dry ground, 150 MHz', () => toDeg(pseudoBrewsterRad(MEDIUM)), 14.477306],
    ['pseudo-Brewster angle over fresh water, 150 MHz', () => toDeg(pseudoBrewsterRad(WATER)), 6.379339],
  ]),
  ...rows({ unit: 'm', tolerance: 1e-4, mark: 'P', source: 'Bullington, Proc. IRE 35 (1947): minimum effective height' }, [
    ['minimum effective height, medium dry, V', () => minimumEffectiveHeightM(MEDIUM, 'v', 150), 1.27521],
    ['minimum effective height, medium dry, H', () => minimumEffectiveHeightM(MEDIUM, 'h', 150), 0.08501],
    ['minimum effective height, wet, V', () => minimumEffectiveHeightM(WET, 'v', 150), 1.77269],
    ['minimum effective height, wet, H', () => minimumEffectiveHeightM(WET, 'h', 150), 0.05904],
    ['minimum effective height, fresh water, V', () => minimumEffectiveHeightM(WATER, 'v', 150), 2.86304],
    ['minimum effective height, fresh water, H', () => minimumEffectiveHeightM(WATER, 'h', 150), 0.03579],
  ]),
  ...rows({ unit: 'dB', tolerance: 1e-3, mark: 'P', source: 'Bullington, Proc. IRE 35 (1947): plane earth' }, [
    ['plane earth, 1 km, 1 and 1.7 m', () => planeEarthLossDb(1000, 1, 1.7), 115.39102],
    ['plane earth, one octave of distance', () => planeEarthLossDb(2000, 1, 1.7) - planeEarthLossDb(1000, 1, 1.7), 12.0412],
  ]),
  ...rows({ unit: '', tolerance: 1e-6, mark: 'P', source: 'Ament, Proc. IRE 41 (1953)' }, [
    ['roughness 0.5 m at 5 degrees, 150 MHz', () => roughnessFactor(0.5, Math.sin(toRad(5)), 150), 0.9631585],
    ['roughness 0.5 m at 20 degrees, 150 MHz', () => roughnessFactor(0.5, Math.sin(toRad(20)), 150), 0.56098465],
    ['roughness 1 m at 20 degrees, 150 MHz', () => roughnessFactor(1, Math.sin(toRad(20)), 150), 0.09903847],
  ]),
];

const NORTON: readonly CheckRow[] = [
  ...rows({ unit: 'dB', tolerance: 0.01, mark: 'D', source: 'flat earth with surface wave, computed independently for this project' }, [
    ['flat earth, 150 MHz, eps 15, 1 km, 1 and 1.7 m, V', () => flatGain(150, 15, 0.005, 1000, 1, 1.7, 'v'), -33.488164],
    ['flat earth, 150 MHz, eps 15, 1 km, 1 and 1.7 m, H', () => flatGain(150, 15, 0.005, 1000, 1, 1.7, 'h'), -39.360387],
    ['flat earth, 150 MHz, eps 80, 500 m, 1 and 1.7 m, V', () => flatGain(150, 80, 0.005, 500, 1, 1.7, 'v'), -18.212076],
    ['flat earth, 150 MHz, eps 80, 500 m, 1 and 1.7 m, H', () => flatGain(150, 80, 0.005, 500, 1, 1.7, 'h'), -33.39671],
    ['flat earth, 40 MHz, eps 15, 500 m, 0.5 and 1.5 m, V', () => flatGain(40, 15, 0.005, 500, 0.5, 1.5, 'v'), -22.009926],
    ['flat earth, 40 MHz, eps 15, 500 m, 0.5 and 1.5 m, H', () => flatGain(40, 15, 0.005, 500, 0.5, 1.5, 'h'), -49.892954],
  ]),
  ...rows({ unit: 'dB', tolerance: 0.5, mark: 'D', source: 'Sommerfeld integral, integrated for this project' }, [
    ['flat earth against the exact integral, all ground classes, 60 MHz, V, worst', () => sommerfeldWorstDb(60, 'v'), 0],
    ['flat earth against the exact integral, all ground classes, 60 MHz, H, worst', () => sommerfeldWorstDb(60, 'h'), 0],
    ['flat earth against the exact integral, all ground classes, 150 MHz, V, worst', () => sommerfeldWorstDb(150, 'v'), 0],
    ['flat earth against the exact integral, all ground classes, 150 MHz, H, worst', () => sommerfeldWorstDb(150, 'h'), 0],
  ]),
  ...rows({ unit: 'dB', tolerance: 1.6, mark: 'D', source: 'Sommerfeld integral, integrated for this project' }, [
    ['flat earth against the exact integral, all ground classes, 30 MHz, V, worst', () => sommerfeldWorstDb(30, 'v'), 0],
    ['flat earth against the exact integral, all ground classes, 30 MHz, H, worst', () => sommerfeldWorstDb(30, 'h'), 0],
  ]),
];

const COVER_AND_NOISE: readonly CheckRow[] = [
  ...rows({ unit: 'dB/m', tolerance: 1e-4, mark: 'P', source: 'ITU-R P.833, table' }, [
    ['woodland at 105.9 MHz, loss a metre at the edge', () => woodlandLossDb(1e-3, 105.9) / 1e-3, 0.04],
    ['woodland at 466.475 MHz, the same', () => woodlandLossDb(1e-3, 466.475) / 1e-3, 0.12],
    ['woodland at 949 MHz, the same', () => woodlandLossDb(1e-3, 949) / 1e-3, 0.17],
  ]),
  ...rows({ unit: 'dB', tolerance: 1e-4, mark: 'P', source: 'ITU-R P.833, table' }, [
    ['woodland at 105.9 MHz, at most', () => woodlandLossDb(100_000, 105.9), 9.4],
    ['woodland at 466.475 MHz, at most', () => woodlandLossDb(100_000, 466.475), 18],
    ['woodland at 949 MHz, at most', () => woodlandLossDb(100_000, 949), 26.5],
  ]),
  ...rows({ unit: 'dB', tolerance: 1e-4, mark: 'P', source: 'ITU-R P.833, table interpolated' }, [
    ['woodland at 150 MHz, 20 m', () => woodlandLossDb(20, 150), 0.987972],
    ['woodland at 150 MHz, 100 m', () => woodlandLossDb(100, 150), 4.125254],
    ['woodland at 150 MHz, 500 m', () => woodlandLossDb(500, 150), 9.919539],
  ]),
  ...rows({ unit: 'dB over kTB', tolerance: 1e-3, mark: 'P', source: 'ITU-R P.372' }, [
    ['man-made noise at 150 MHz: city', () => manMadeNoiseDb('city', 150), 17.534],
    ['man-made noise at 150 MHz: residential', () => manMadeNoiseDb('residential', 150), 12.222272],
    ['man-made noise at 150 MHz: rural', () => manMadeNoiseDb('rural', 150), 6.922272],
    ['man-made noise at 150 MHz: quiet rural', () => manMadeNoiseDb('quiet-rural', 150), -8.63621],
    ['galactic noise at 150 MHz', () => galacticNoiseDb(150), 1.949901],
  ]),
];

const share = (sorted: readonly number[], part: number): number => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))]!;

const TERRAIN: readonly CheckRow[] = [
  {
    claim: 'terrain field on flat ground against flat earth, 150 MHz, 200 m to 3 km, V and H, worst',
    unit: 'dB',
    value: () => flatGroundWorstDb(150),
    reference: 0,
    tolerance: 0.5,
    mark: 'D',
    source: 'flat earth with surface wave',
  },
  {
    claim: 'terrain field on flat ground against flat earth, 72 MHz, worst',
    unit: 'dB',
    value: () => flatGroundWorstDb(72),
    reference: 0,
    tolerance: 0.5,
    mark: 'D',
    source: 'flat earth with surface wave',
  },
  {
    claim: 'terrain field behind a single thin wedge, worst',
    unit: 'dB',
    value: wedgeWorstDb,
    reference: 0,
    tolerance: 1,
    mark: 'P',
    source: 'exact Fresnel integral',
  },
  {
    claim: 'model on hills against full-wave profiles, rms',
    unit: 'dB',
    value: hillsRmsDb,
    reference: 0,
    tolerance: 3,
    mark: 'D',
    source: 'full-wave computation, not a measurement',
  },
  {
    claim: 'terrain field with ends swapped, median difference',
    unit: 'dB',
    value: () => share(swappedDb(), 0.5),
    reference: 0,
    tolerance: 0.5,
    mark: 'D',
    source: 'reciprocity',
  },
  {
    claim: 'terrain field with ends swapped, 90 % of differences',
    unit: 'dB',
    value: () => share(swappedDb(), 0.9),
    reference: 0,
    tolerance: 1.5,
    mark: 'D',
    source: 'reciprocity',
  },
];

/** Every check of the propagation model. */
export const propagationRows: readonly CheckRow[] = [
  ...SPACE,
  ...EDGES,
  ...GROUND_ROWS,
  ...NORTON,
  ...COVER_AND_NOISE,
  ...echoRows,
  ...TERRAIN,
];
