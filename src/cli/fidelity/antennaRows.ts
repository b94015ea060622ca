import type { Pattern } from '../../core/antenna/antenna';
import { BODY_STEP_DEG, shadowHeldClose } from '../../core/antenna/body';
import { ANTENNAS, antennaById } from '../../core/antenna/catalogue';
import { type PatternCuts, patternCuts } from '../../core/antenna/cuts';
import { makeReceivingAntenna } from '../../core/antenna/orientation';
import { patternOf } from '../../core/antenna/pattern';
import { DRIVEN, type Rod, rodsAt } from '../../core/antenna/rods';
import { meshOf } from '../../core/antenna/segments';
import { meanGain } from '../../core/antenna/sphereMean';
import { impedanceMatrix } from '../../core/antenna/wireSolver';
import { toRad } from '../../core/units/angles';
import { toDb } from '../../core/units/decibels';
import { DIPOLE_REFERENCE, type ReferenceCut, YAGI3_REFERENCE } from './antennaReference';
import type { CheckRow } from './row';

const MHZ = 150;
const WAVELENGTH_M = 299.792458 / MHZ;

const HAND_YAGI_SOURCE = 'moment-method code of the NEC-2 kind, computed independently for this project';
/** So thin that its impedance is that of a filament with one sine of current; ends left as they are. */
const FILAMENT = { segmentsPerRod: 2, lengthenEnds: false };
const HALF_WAVE: readonly Rod[] = [{ along: 0, length: 0.5, diameter: 2e-7, drive: DRIVEN }];

const solved = (rods: readonly Rod[], options = {}): Pattern => patternOf(rodsAt(rods)(WAVELENGTH_M), MHZ, options);
const cutsOf = (pattern: Pattern): PatternCuts => patternCuts(pattern, 'h', 5);
const handYagi = (): PatternCuts => cutsOf(antennaById('yagi3').pattern(MHZ, MHZ));
const halfWave = (): PatternCuts => cutsOf(solved(HALF_WAVE, FILAMENT));
const testDipole = (): PatternCuts => cutsOf(solved([{ along: 0, length: 0.472, diameter: 0.003, drive: DRIVEN }]));

const dipoleRows: readonly CheckRow[] = [
  { claim: 'half-wave dipole: gain', unit: 'dBi', value: () => halfWave().forwardDbi, reference: 2.151, tolerance: 0.005 },
  { claim: 'half-wave dipole: -3 dB width', unit: 'deg', value: () => halfWave().widthDeg ?? Number.NaN, reference: 78.08, tolerance: 0.2 },
  { claim: 'half-wave dipole: resistance', unit: 'ohm', value: () => halfWave().impedanceOhm[0], reference: 73.13, tolerance: 0.1 },
  { claim: 'half-wave dipole: reactance', unit: 'ohm', value: () => halfWave().impedanceOhm[1], reference: 42.54, tolerance: 0.1 },
].map((row) => ({ ...row, mark: 'P', source: 'thin half-wave dipole, Balanis, "Antenna Theory", chapters 4 and 8' }));

/** Distance in wavelengths, resistance and reactance, ohms. */
const CARTER = [
  [0.1, 67.33, 7.54],
  [0.2, 51.4, -19.17],
  [0.25, 40.79, -28.35],
  [0.3, 29.26, -34.44],
  [0.4, 6.22, -37.43],
  [0.5, -12.53, -29.93],
  [0.75, -22.5, 6.63],
  [1, 4.01, 17.74],
] as const;

/** Open-circuit mutual impedance of two half-wave filaments side by side, ohms. */
function mutualOhm(apart: number): readonly [number, number] {
  const pair = rodsAt([...HALF_WAVE, { ...HALF_WAVE[0]!, along: apart }])(WAVELENGTH_M);
  const matrix = impedanceMatrix(meshOf(pair, WAVELENGTH_M, 2, false), (2 * Math.PI) / WAVELENGTH_M);
  return [matrix[2]!, matrix[3]!];
}

const mutualRows: readonly CheckRow[] = CARTER.flatMap(([apart, resistance, reactance]) =>
  [resistance, reactance].map((reference, part) => ({
    claim: `half-wave dipoles ${apart} wavelength apart: mutual ${part === 0 ? 'resistance' : 'reactance'}`,
    unit: 'ohm',
    value: () => mutualOhm(apart)[part]!,
    reference,
    tolerance: 0.05,
    mark: 'P' as const,
    source: 'Carter, Proc. IRE 20 (1932) 1004',
  })),
);

const NBS_SOURCE = 'Viezbicke, NBS Technical Note 688 (1976); element lengths from memory, driven length 0.47 our own';
const nbsReflectorAndDriven: readonly Rod[] = [
  { along: -0.2, length: 0.482, diameter: 0.0085 },
  { along: 0, length: 0.47, diameter: 0.0085, drive: DRIVEN },
];
const DIPOLE_DBI = 2.151;

const nbsRows: readonly CheckRow[] = [
  {
    claim: 'NBS Yagi, boom 0.4 wavelength: gain over a dipole',
    unit: 'dBd',
    value: () => solved([...nbsReflectorAndDriven, { along: 0.2, length: 0.442, diameter: 0.0085 }]).forwardDbi - DIPOLE_DBI,
    reference: 7.1,
    tolerance: 0.5,
    mark: 'P',
    source: NBS_SOURCE,
  },
  {
    claim: 'NBS Yagi, boom 0.8 wavelength (the five-element antenna): gain over a dipole',
    unit: 'dBd',
    value: () => antennaById('yagi5').pattern(MHZ, MHZ).forwardDbi - DIPOLE_DBI,
    reference: 9.2,
    tolerance: 0.5,
    mark: 'P',
    source: NBS_SOURCE,
  },
];

/** Largest difference from a reference cut where that is within `withinDb` of its peak, dB. */
function worstDb(cuts: PatternCuts, reference: ReferenceCut, withinDb: number): number {
  const worst = (points: PatternCuts['azimuth'], want: readonly number[]) => {
    const peak = Math.max(...want);
    return Math.max(...want.map((dbi, i) => (dbi > peak - withinDb ? Math.abs(points[i]!.coDbi - dbi) : 0)));
  };
  return Math.max(worst(cuts.azimuth, reference.azimuthDbi), worst(cuts.elevation, reference.elevationDbi));
}

const handYagiRows: readonly CheckRow[] = [
  { claim: 'hand Yagi: gain', unit: 'dBi', value: () => handYagi().forwardDbi, reference: 8.77, tolerance: 0.15 },
  { claim: 'hand Yagi: front to back', unit: 'dB', value: () => handYagi().frontToBackDb, reference: 15.6, tolerance: 1 },
  { claim: 'hand Yagi: -3 dB width', unit: 'deg', value: () => handYagi().widthDeg ?? Number.NaN, reference: 59.5, tolerance: 1.5 },
  ...(
    [
      ['hand Yagi', handYagi, YAGI3_REFERENCE],
      ['dipole of 0.472 wavelength', testDipole, DIPOLE_REFERENCE],
    ] as const
  ).flatMap(([name, cuts, reference]) =>
    (
      [
        [15, 0.5],
        [20, 1.5],
      ] as const
    ).map(([withinDb, tolerance]) => ({
      claim: `${name}: worst difference within ${withinDb} dB of the peak`,
      unit: 'dB',
      value: () => worstDb(cuts(), reference, withinDb),
      reference: 0,
      tolerance,
    })),
  ),
].map((row) => ({ ...row, mark: 'D', source: HAND_YAGI_SOURCE }));

const smallRows: readonly CheckRow[] = (
  [
    ['loop', 1.22],
    ['whip', 1.95],
  ] as const
).map(([id, reference]) => ({
  claim: `${id}: gain ahead`,
  unit: 'dBi',
  value: () => antennaById(id).pattern(MHZ, MHZ).forwardDbi,
  reference,
  tolerance: 0.4,
  mark: 'D',
  source: HAND_YAGI_SOURCE,
}));

const lawRows: readonly CheckRow[] = ANTENNAS.map((antenna) => ({
  claim: `${antenna.id}: mean gain over the sphere, lossless`,
  unit: 'power ratio',
  value: () => meanGain(antenna.pattern(MHZ, MHZ)),
  reference: 1,
  tolerance: 0.01,
  mark: 'D' as const,
  source: 'law: conservation of power',
}));

const symmetryRows: readonly CheckRow[] = ANTENNAS.filter(({ leastMHz }) => leastMHz > 0).map((antenna) => ({
  claim: `${antenna.id}: largest difference between left and right`,
  unit: 'dB',
  value: () => {
    const { azimuth } = cutsOf(antenna.pattern(MHZ, MHZ));
    return Math.max(...azimuth.slice(1).map((point, i) => Math.abs(point.coDbi - azimuth[azimuth.length - 1 - i]!.coDbi)));
  },
  reference: 0,
  tolerance: 0.1,
  mark: 'D' as const,
  source: 'law: the wires are symmetric',
}));

/** Loss of a wave from ahead whose linear field lies `psiDeg` off the elements, dB. */
function axisLossDb(psiDeg: number, floorDb: number): number {
  const turn = makeReceivingAntenna(antennaById('yagi3').pattern(MHZ, MHZ), floorDb).fan;
  const wave = { azimuthDeg: 0, elevationDeg: 0, eastIm: 0, northRe: 0, northIm: 0, upIm: 0 };
  const powerAt = (deg: number) => turn([{ ...wave, eastRe: Math.cos(toRad(deg)), upRe: Math.sin(toRad(deg)) }])(0, 0);
  return toDb(powerAt(psiDeg) / powerAt(0));
}

const axisRows: readonly CheckRow[] = (
  [
    [20, 60, -5.9],
    [20, 80, -14],
    [20, 90, -20],
    [12, 60, -5.3],
    [12, 80, -10.4],
    [12, 90, -12],
  ] as const
).map(([floorDb, psiDeg, reference]) => ({
  claim: `field ${psiDeg} degrees off the elements, cross-polar floor ${floorDb} dB down`,
  unit: 'dB',
  value: () => axisLossDb(psiDeg, floorDb),
  reference,
  tolerance: 0.1,
  mark: 'D',
  source: '10 log(cos² psi + sin² psi / X), computed independently for this project',
}));

const bodyRow: CheckRow = {
  claim: 'body behind a whip held close: vertical wave from behind',
  unit: 'dB',
  value: () => 20 * Math.log10(shadowHeldClose(MHZ).vertical[180 / BODY_STEP_DEG]!),
  reference: -7.7,
  tolerance: 0.1,
  mark: 'D',
  source: 'exact series of a lossy cylinder 0.3 m thick at 0.5 m, computed independently for this project',
};

/** Every check value of the antennas. */
export const antennaRows: readonly CheckRow[] = [
  ...dipoleRows,
  ...mutualRows,
  ...nbsRows,
  ...handYagiRows,
  ...smallRows,
  ...lawRows,
  ...symmetryRows,
  ...axisRows,
  bodyRow,
];
