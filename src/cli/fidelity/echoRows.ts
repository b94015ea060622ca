import { cylinderCoefficient } from '../../core/radio/cylinder';
import { lambertEchoRatio } from '../../core/radio/hillEcho';
import { wireCoefficient, wireSpread } from '../../core/radio/thinWire';
import { plateEchoRatio } from '../../core/radio/wallEcho';
import { LIGHT_M_MHZ, waveNumber } from '../../core/radio/wavelength';
import { toRad } from '../../core/units/angles';
import { magnitude } from '../../core/units/complex';
import { type CheckRow, rows } from './row';
import { fadesBelow, fadingCorrelation } from './scatterTrials';

const wire = (deg: number): number => magnitude(wireCoefficient(waveNumber(150), 0.0125, Math.sin(toRad(deg))));
const fade = (part: 'crossings' | 'meanLength', db: number) => () => fadesBelow(db)[part];

/** A wire's field over the incident one, dB, at distances r1 and r2 along the rays. */
const wireEchoDb = (deg: number, r1M: number, r2M: number): number => 20 * Math.log10(wire(deg) * wireSpread(r1M, r2M));
/** A mast of 1 m radius, 150 MHz, by the angle from straight on. */
const mast = (turnDeg: number): number => magnitude(cylinderCoefficient(waveNumber(150), 1, 1, toRad(turnDeg)));

/** Checks of echoes and scatter. */
export const echoRows: readonly CheckRow[] = [
  ...rows({ unit: '', tolerance: 0.05, mark: 'P', source: 'J0(2 pi d / lambda), isotropic scatter' }, [
    ['fading correlation 0.1 wavelength apart', () => fadingCorrelation(0.1), 0.90371],
    ['fading correlation 0.25 wavelength apart', () => fadingCorrelation(0.25), 0.472],
    ['fading correlation 0.5 wavelength apart', () => fadingCorrelation(0.5), -0.30424],
  ]),
  {
    claim: 'Rayleigh fades: crossings of -20 dB per wavelength',
    unit: '',
    value: fade('crossings', -20),
    reference: 0.24817,
    tolerance: 0.024817,
    mark: 'P',
    source: 'Rice: sqrt(2 pi) r exp(-r^2)',
  },
  {
    claim: 'Rayleigh fades: crossings of -10 dB per wavelength',
    unit: '',
    value: fade('crossings', -10),
    reference: 0.71723,
    tolerance: 0.071723,
    mark: 'P',
    source: 'Rice: sqrt(2 pi) r exp(-r^2)',
  },
  {
    claim: 'Rayleigh fades: mean length below -20 dB',
    unit: 'wavelengths',
    value: fade('meanLength', -20),
    reference: 0.04009,
    tolerance: 0.004009,
    mark: 'P',
    source: 'Rice: (exp(r^2) - 1) / (sqrt(2 pi) r)',
  },
  {
    claim: 'Rayleigh fades: mean length below -10 dB',
    unit: 'wavelengths',
    value: fade('meanLength', -10),
    reference: 0.13268,
    tolerance: 0.013268,
    mark: 'P',
    source: 'Rice: (exp(r^2) - 1) / (sqrt(2 pi) r)',
  },
  ...rows({ unit: '', tolerance: 1e-4, mark: 'D', source: 'series for a conducting cylinder, computed independently for this project' }, [
    ['thin wire |D|, 150 MHz, radius 12.5 mm, 90 degrees', () => wire(90), 0.19094405],
    ['thin wire |D|, 60 degrees', () => wire(60), 0.21295741],
    ['thin wire |D|, 30 degrees', () => wire(30), 0.32575525],
    ['thin wire echo, 20 + 20 m, dB', () => 20 * Math.log10(wire(90) * wireSpread(20, 20)), -30.402477],
  ]),
  ...rows(
    { unit: 'dB', tolerance: 0.5, mark: 'D', source: 'wire solver nec2c: 200 m of wire with lossy ends, short dipole, 0.2 m segments' },
    (
      [
        [90, 20, 20, -30.421],
        [90, 60, 10, -25.0595],
        [60, 20, 20, -29.5082],
        [60, 60, 10, -23.9997],
        [45, 20, 20, -28.2256],
        [45, 60, 10, -22.7652],
        [30, 20, 20, -25.8342],
        [30, 60, 10, -20.6296],
      ] as const
    ).map(
      ([deg, r1M, r2M, db]) =>
        [`long wire, radius 12.5 mm, ${deg} degrees, ${r1M} + ${r2M} m`, () => wireEchoDb(deg, r1M, r2M), db] as const,
    ),
  ),
  ...rows({ unit: '', tolerance: 1e-4, mark: 'D', source: 'series for a conducting cylinder, computed independently for this project' }, [
    ['mast of 1 m radius, 150 MHz, straight on', () => mast(0), 1.830615],
    ['mast of 1 m radius, 60 degrees off', () => mast(60), 0.666537],
    ['mast of 1 m radius, 90 degrees off', () => mast(90), 0.658617],
    ['mast of 1 m radius, straight back', () => mast(180), 0.722477],
  ]),
  ...rows({ unit: 'dB', tolerance: 1e-4, mark: 'D', source: 'computed independently for this project' }, [
    [
      'Lambert facet 200 x 200 m, rho 0.1, 60 degrees, 1 km',
      () => 10 * Math.log10(lambertEchoRatio(0.1, 40_000, 0.5, 0.5, 1000, 1000, 1000)),
      -34.971499,
    ],
    [
      'plate 10 x 6 m, |G| 0.5, cos 0.7, 50/30/60 m',
      () => 20 * Math.log10(plateEchoRatio(0.5, 60, 0.7, LIGHT_M_MHZ / 150, 50, 30, 60)),
      -8.5193746,
    ],
  ]),
];
