import { expect, test } from 'vitest';
import { antennaFigures } from '../../../src/core/antenna/antennaFigures';
import { ANTENNAS, antennaById, fitsFrequency } from '../../../src/core/antenna/catalogue';
import { makeReceivingAntenna } from '../../../src/core/antenna/orientation';
import { patternOf } from '../../../src/core/antenna/pattern';
import { ANTENNA_IDS } from '../../../src/core/scenario/schema';

test('every antenna of the scenario format is in the catalogue once', () => {
  expect(ANTENNAS.map(({ id }) => id).sort()).toEqual([...ANTENNA_IDS].sort());
});

test('the wires that are drawn are those that are solved, and the boom is as long as they reach', () => {
  for (const antenna of ANTENNAS) {
    const wires = antenna.wires(150);
    expect(patternOf(wires, 151).forwardDbi, antenna.id).toBe(antenna.pattern(151, 150).forwardDbi);
    const along = wires.flatMap(({ corners }) => corners.map(([x]) => x));
    expect(Math.max(...along) - Math.min(...along), antenna.id).toBeCloseTo(antenna.boomM(150), 9);
  }
});

// Gains, widths and ratios as `pattern NAME` gives them; those of yagi3 are held against an independent code in tests/outside.
test.each([
  ['yagi3', 0.66, 8.8, 60, 16],
  ['yagi2', 0.3, 6.6, 68, 10],
  ['phased2', 0.25, 6.6, 70, 24],
  ['yagi5', 1.6, 11.2, 47, 12.5],
  ['loop', 0.1, 1.2, 102, 0],
  ['whip', 0, 1.9, null, 0],
] as const)(
  'card of %s at 150 MHz: boom %f m, gain %f dBi, width %s degrees, front to back %f dB',
  (id, boomM, gainDbi, widthDeg, ratioDb) => {
    const card = antennaFigures(antennaById(id), 150, 150);
    expect(Math.abs(card.boomM - boomM)).toBeLessThan(0.01);
    expect(Math.abs(card.gainDbi - gainDbi)).toBeLessThan(0.3);
    expect(Math.abs(card.frontToBackDb - ratioDb)).toBeLessThan(1);
    if (widthDeg === null) expect(card.widthDeg).toBeNull();
    else expect(Math.abs(card.widthDeg! - widthDeg)).toBeLessThan(2);
  },
);

test('loop and whip are taken up standing, rods across a boom lying level', () => {
  for (const { takenUpRollDeg, leastMHz } of ANTENNAS) expect(takenUpRollDeg).toBe(leastMHz > 0 ? 0 : 90);
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
