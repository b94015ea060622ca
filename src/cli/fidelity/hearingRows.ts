import { detectionChance, dPrimeOneDb } from '../../core/ear/detection';
import { doseHours } from '../../core/ear/dose';
import { levelStepDb } from '../../core/ear/loudness';
import { galacticNoiseDb, manMadeNoiseDb, thermalNoiseDbm } from '../../core/radio/noise';
import { driveDb, limitedDb } from '../../core/receiver/limiter';
import { S9_DBM, sUnits } from '../../core/receiver/sMeter';
import type { NoiseClassId } from '../../core/scenario/schema';
import { toDb, toPowerRatio } from '../../core/units/decibels';
import type { CheckRow } from './row';

/** Front-to-back of 15 dB as it is heard with a net gain, the front at a power. */
function frontToBackHeardDb(powerDbm: number, netGainDb: number): number {
  return limitedDb(driveDb(powerDbm, netGainDb)) - limitedDb(driveDb(powerDbm - 15, netGainDb));
}

const limiterRow = (powerDbm: number, netGainDb: number, reference: number): CheckRow => ({
  claim: `an antenna of 15 dB front-to-back is heard with this difference at ${powerDbm} dBm and ${netGainDb} dB of gain`,
  unit: 'dB',
  value: () => frontToBackHeardDb(powerDbm, netGainDb),
  reference,
  tolerance: 0.5,
  mark: 'D',
  source: 'soft limiter, computed independently for this project',
});

const detectionRow = (pulses: number, reference: number): CheckRow => ({
  claim: `chance to hear ${pulses} pulse(s) of 20 ms at -8 dB in 2.5 kHz, 1 % false alarms`,
  unit: '',
  value: () => detectionChance(-8, 20, pulses),
  reference,
  tolerance: 0.02,
  mark: 'D',
  source: 'signal detection theory, computed independently for this project',
});

const stepRow = (sensationDb: number, reference: number): CheckRow => ({
  claim: `smallest level step told apart at ${sensationDb} dB sensation level`,
  unit: 'dB',
  value: () => levelStepDb(sensationDb),
  reference,
  tolerance: 0.02,
  mark: 'M',
  source: 'Jesteadt, Wier and Green 1977, value from memory',
});

const doseRow = (levelDba: number, reference: number): CheckRow => ({
  claim: `hours a week at ${levelDba} dBA that use up 1.6 Pa²h`,
  unit: 'h',
  value: () => doseHours(levelDba),
  reference,
  tolerance: 0.01 * reference,
  mark: 'P',
  source: 'WHO/ITU-T H.870: 80 dBA for 40 h',
});

/** d' = 1 for one pulse in the noise of a place, noise figure 3 dB. */
function faintestDbm(place: NoiseClassId): number {
  const noise = toPowerRatio(manMadeNoiseDb(place, 150)) + toPowerRatio(galacticNoiseDb(150)) + toPowerRatio(3) - 1; // P.372: f = fa + fr - 1
  return thermalNoiseDbm(2_500) + toDb(noise) + dPrimeOneDb(20);
}

const faintestRow = (place: NoiseClassId, reference: number): CheckRow => ({
  claim: `20 ms pulse at d' = 1, ${place}, noise figure 3 dB, 2.5 kHz, 150 MHz`,
  unit: 'dBm',
  value: () => faintestDbm(place),
  reference,
  tolerance: 0.3,
  mark: 'D',
  source: 'ITU-R P.372 noise and E/N0 = 10 dB, computed independently for this project',
});

const thermalRow = (bandwidthHz: number, reference: number): CheckRow => ({
  claim: `thermal noise in ${bandwidthHz} Hz at 290 K`,
  unit: 'dBm',
  value: () => thermalNoiseDbm(bandwidthHz),
  reference,
  tolerance: 0.05,
  mark: 'P',
  source: 'k T0 B, Boltzmann constant of the SI',
});

/** The rows of receiver and ear. */
export const hearingRows: readonly CheckRow[] = [
  { claim: 'S9 above 30 MHz', unit: 'dBm', value: () => S9_DBM, reference: -93, tolerance: 0, mark: 'P', source: 'IARU Region 1 R.1' },
  {
    claim: 'S9 in 50 ohm',
    unit: 'µV',
    value: () => Math.sqrt(50 * 1e-3 * toPowerRatio(S9_DBM)) * 1e6,
    reference: 5.006,
    tolerance: 0.0005,
    mark: 'P',
    source: 'IARU Region 1 R.1: 5.0 µV, worked out to four digits',
  },
  {
    claim: '12 dB under S9 reads S7 at full gain',
    unit: 'S',
    value: () => sUnits(-105, 90),
    reference: 7,
    tolerance: 1e-9,
    mark: 'P',
    source: 'IARU Region 1 R.1: 6 dB a unit',
  },
  thermalRow(2_000, -141),
  thermalRow(2_500, -140),
  thermalRow(3_000, -139.2),
  faintestRow('quiet-rural', -142.7),
  faintestRow('rural', -138.2),
  faintestRow('residential', -134.1),
  faintestRow('city', -129.3),
  limiterRow(-120, 90, 14.9),
  limiterRow(-100, 90, 9.8),
  limiterRow(-80, 90, 0.5),
  limiterRow(-60, 90, 0),
  limiterRow(-80, 50, 14.9),
  detectionRow(1, 0.063),
  detectionRow(3, 0.17),
  detectionRow(10, 0.571),
  stepRow(10, 1.44),
  stepRow(20, 1.25),
  stepRow(40, 0.93),
  stepRow(60, 0.69),
  stepRow(80, 0.5),
  doseRow(83, 20),
  doseRow(86, 10),
  doseRow(89, 5),
  doseRow(92, 2.5),
  doseRow(95, 1.26),
];
