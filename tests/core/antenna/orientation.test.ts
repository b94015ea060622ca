import { expect, test } from 'vitest';
import type { ArrivingField } from '../../../src/core/antenna/arrivalFan';
import { ANTENNAS, antennaById } from '../../../src/core/antenna/catalogue';
import { FEED_LINE_FLOOR_DB, makeReceivingAntenna, type Pose } from '../../../src/core/antenna/orientation';
import { powerOf } from '../../../src/core/antenna/pattern';
import { randomFor } from '../../../src/core/random/draw';
import { toRad } from '../../../src/core/units/angles';

const NO_FEED_LINE = 400;
const { body: _body, ...bareYagi } = antennaById('yagi3').pattern(150, 150);
const bare = makeReceivingAntenna(bareYagi, NO_FEED_LINE);
const voltage = (waves: readonly ArrivingField[], pose: Pose, antenna = bare) => {
  const out = new Float64Array(2);
  antenna.voltageInto(waves, pose, out);
  return { re: out[0]!, im: out[1]!, dbi: 10 * Math.log10(out[0]! ** 2 + out[1]! ** 2) };
};

/** A wave of 1 V/m from a direction; its field lies `psiDeg` from level towards upward, across the direction. */
function waveFrom(azimuthDeg: number, elevationDeg: number, psiDeg: number): ArrivingField {
  const [a, e, psi] = [toRad(azimuthDeg), toRad(elevationDeg), toRad(psiDeg)];
  const [level, up] = [Math.cos(psi), Math.sin(psi)];
  return {
    azimuthDeg,
    elevationDeg,
    eastRe: level * Math.cos(a) - up * Math.sin(a) * Math.sin(e),
    northRe: -level * Math.sin(a) - up * Math.cos(a) * Math.sin(e),
    upRe: up * Math.cos(e),
    eastIm: 0,
    northIm: 0,
    upIm: 0,
  };
}

test.each([0, 37, 90, 200, 359])('heading %i: a level wave from ahead meets the full gain of a flat Yagi', (deg) => {
  expect(voltage([waveFrom(deg, 0, 0)], { headingDeg: deg, rollDeg: 0 }).dbi).toBeCloseTo(bareYagi.forwardDbi, 9);
});

test('an upright Yagi has its full gain for an upright wave, none for a level one', () => {
  expect(voltage([waveFrom(50, 0, 90)], { headingDeg: 50, rollDeg: 90 }).dbi).toBeCloseTo(bareYagi.forwardDbi, 9);
  expect(voltage([waveFrom(50, 0, 0)], { headingDeg: 50, rollDeg: 90 }).dbi).toBeLessThan(-200);
});

test.each([10, 45, 80])('roll %i degrees brings the elements to a field that leans as much', (rollDeg) => {
  // Rolled clockwise seen from behind, the left tips rise: the field that fits leans up to the left.
  expect(voltage([waveFrom(0, 0, 180 - rollDeg)], { headingDeg: 0, rollDeg }).dbi).toBeCloseTo(bareYagi.forwardDbi, 9);
});

test('tilted up by 25 degrees, the boom points at a wave from 25 degrees up', () => {
  const got = voltage([waveFrom(310, 25, 0)], { headingDeg: 310, tiltDeg: 25, rollDeg: 0 });
  expect(got.dbi).toBeCloseTo(bareYagi.forwardDbi, 9);
});

test('upright, tilted up by 25 degrees, it fits an upward-leaning wave from 25 degrees up', () => {
  const got = voltage([waveFrom(310, 25, 90)], { headingDeg: 310, tiltDeg: 25, rollDeg: 90 });
  expect(got.dbi).toBeCloseTo(bareYagi.forwardDbi, 9);
});

test('a wave 40 degrees clockwise of the heading comes in on the right of the pattern', () => {
  const skew = makeReceivingAntenna({ ...bareYagi, fieldInto: (_x, y, _z, out) => out.set([0, 0, y < 0 ? 1 : 2, 0]) }, NO_FEED_LINE);
  expect(voltage([waveFrom(140, 0, 0)], { headingDeg: 100, rollDeg: 0 }, skew).dbi).toBeCloseTo(0, 6);
});

test.each([...Array(40).keys()])('seed %i: turning waves and antenna together changes nothing', (seed) => {
  const random = randomFor(`turn-${seed}`, 'walk');
  const antenna = makeReceivingAntenna(antennaById('loop').pattern(150, 150));
  const [azimuth, elevation, psi, turn] = [360 * random(), 90 * random() - 45, 360 * random(), 360 * random()];
  const pose = { headingDeg: 360 * random(), tiltDeg: 40 * random() - 20, rollDeg: 90 * random() };
  const before = voltage([waveFrom(azimuth, elevation, psi)], pose, antenna);
  const after = voltage([waveFrom(azimuth + turn, elevation, psi)], { ...pose, headingDeg: pose.headingDeg + turn }, antenna);
  expect(after.re).toBeCloseTo(before.re, 9);
  expect(after.im).toBeCloseTo(before.im, 9);
});

test.each([...Array(20).keys()])('seed %i: over both polarizations, a direction gives the gain of the pattern there', (seed) => {
  const random = randomFor(`gain-${seed}`, 'walk');
  const [azimuth, elevation] = [360 * random(), 180 * random() - 90];
  const out = new Float64Array(4);
  const [a, e] = [toRad(azimuth), toRad(elevation)];
  bareYagi.fieldInto(Math.cos(a) * Math.cos(e), -Math.sin(a) * Math.cos(e), Math.sin(e), out);
  const sum = [0, 90].reduce(
    (power, psi) => power + 10 ** (voltage([waveFrom(azimuth, elevation, psi)], { headingDeg: 0, rollDeg: 0 }).dbi / 10),
    0,
  );
  expect(sum).toBeCloseTo(powerOf(out), 9);
});

test('waves add as complex voltages: two alike give 6.02 dB more, two opposed give nothing', () => {
  const wave = waveFrom(20, 3, 15);
  const opposed = { ...wave, eastRe: -wave.eastRe, northRe: -wave.northRe, upRe: -wave.upRe };
  const pose = { headingDeg: 0, rollDeg: 0 };
  expect(voltage([wave, wave], pose).dbi - voltage([wave], pose).dbi).toBeCloseTo(6.0206, 4);
  expect(voltage([wave, opposed], pose).dbi).toBe(Number.NEGATIVE_INFINITY);
});

test('the feed line hears a crossed wave 20 dB under the main lobe from every side', () => {
  const antenna = makeReceivingAntenna(bareYagi);
  for (const deg of [0, 70, 180, 300]) {
    const dbi = voltage([waveFrom(deg, 0, 90)], { headingDeg: 0, rollDeg: 0 }, antenna).dbi;
    expect(dbi).toBeCloseTo(bareYagi.forwardDbi - FEED_LINE_FLOOR_DB, 6);
  }
});

test('nothing jumps: half the turn gives about half the change of voltage, for all antennas, near zenith too', () => {
  for (const { pattern } of ANTENNAS) {
    const antenna = makeReceivingAntenna(pattern(150, 150));
    for (const elevation of [0, 60, 89.9]) {
      const at = (deg: number) => voltage([waveFrom(170, elevation, 30)], { headingDeg: deg, rollDeg: 40 }, antenna);
      for (let deg = 0; deg < 360; deg += 15)
        expect(Math.hypot(at(deg).re - at(deg + 0.01).re, at(deg).im - at(deg + 0.01).im)).toBeLessThan(0.003);
    }
  }
});

test('a wave from the very zenith or nadir gives numbers', () => {
  for (const elevation of [90, -90])
    expect(Number.isFinite(voltage([waveFrom(12, elevation, 0)], { headingDeg: 0, rollDeg: 0 }).dbi)).toBe(true);
});

test('the fan gives the squared voltage of the same pose', () => {
  const antenna = makeReceivingAntenna(antennaById('whip').pattern(150, 150));
  const waves = [waveFrom(20, 3, 15), waveFrom(200, 8, 100)];
  const fan = antenna.fan(waves);
  for (const raised of [false, true]) {
    const { re, im } = voltage(waves, { headingDeg: 77, rollDeg: 60, raised }, antenna);
    expect(fan(77, 60, raised)).toBeCloseTo(re * re + im * im, 12);
  }
});
