import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ANTENNAS, antennaById, fitsFrequency } from '../../../src/core/antenna/catalogue';
import { makeReceivingAntenna } from '../../../src/core/antenna/orientation';
import { ANTENNA_IDS } from '../../../src/core/scenario/schema';

test('every antenna of the scenario format is in the catalogue once, with a drawing', () => {
  expect(ANTENNAS.map(({ id }) => id).sort()).toEqual([...ANTENNA_IDS].sort());
  for (const { id } of ANTENNAS) expect(existsSync(`assets/drawings/${id}.svg`), id).toBe(true);
});

test('hand Yagis are refused below 100 MHz with a reason, loop and whip never', () => {
  for (const antenna of ANTENNAS) {
    const small = antenna.id === 'loop' || antenna.id === 'whip';
    expect(fitsFrequency(antenna, 100)).toBeNull();
    expect(fitsFrequency(antenna, 40) === null).toBe(small);
  }
  expect(fitsFrequency(antennaById('yagi3'), 40)).toContain('3.7 m');
});

test('a solution is kept: the same frequencies give the same pattern', () => {
  const { pattern } = antennaById('yagi3');
  expect(pattern(151, 150)).toBe(pattern(151, 150));
  expect(pattern(151, 150)).not.toBe(pattern(151.01, 150));
});

test('every antenna gives finite numbers for every tag and design frequency that a scenario may have', () => {
  const wave = { azimuthDeg: 33, elevationDeg: 4, eastRe: 0.3, eastIm: 0.1, northRe: 0.2, northIm: 0, upRe: 0.7, upIm: -0.4 };
  for (const antenna of ANTENNAS)
    for (const [mhz, designMHz] of [
      [30, 500],
      [500, 100],
      [30, 30],
      [150, 433.92],
    ] as const) {
      const pattern = antenna.pattern(mhz, designMHz);
      expect(Number.isFinite(pattern.forwardDbi + pattern.impedanceOhm[0] + pattern.impedanceOhm[1])).toBe(true);
      expect(Number.isFinite(makeReceivingAntenna(pattern).fan([wave])(10, 45))).toBe(true);
    }
});

test('only the long boom stays at the vehicle; booms in metres at 150 MHz', () => {
  expect(ANTENNAS.filter(({ onFoot }) => !onFoot).map(({ id }) => id)).toEqual(['yagi5']);
  expect(antennaById('yagi3').boomM(150)).toBeCloseTo(0.66, 2);
  expect(antennaById('yagi5').boomM(150)).toBeCloseTo(1.6, 2);
});
