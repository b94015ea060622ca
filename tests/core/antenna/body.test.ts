import { expect, test } from 'vitest';
import { BODY, BODY_STEP_DEG, SHADOW_BEHIND_YAGI, shadowHeldClose } from '../../../src/core/antenna/body';
import { antennaById } from '../../../src/core/antenna/catalogue';
import { besselOrders } from '../../../src/core/antenna/cylinderFunctions';
import { besideCylinder } from '../../../src/core/antenna/lossyCylinder';
import { makeReceivingAntenna } from '../../../src/core/antenna/orientation';

const db = (factor: number) => 20 * Math.log10(factor);

// Abramowitz and Stegun, tables 9.1 and 9.2.
test.each([
  [1, 0.7651976866, 0.4400505857, 0.0882569642, -0.7812128213],
  [5, -0.1775967713, -0.3275791376, -0.3085176252, 0.1478631434],
])('Bessel functions of order 0 and 1 at %f are the tabulated ones to 1e-9', (x, j0, j1, y0, y1) => {
  const { j, y } = besselOrders(4, x);
  for (const [got, want] of [
    [j[0], j0],
    [j[1], j1],
    [y[0], y0],
    [y[1], y1],
  ] as const)
    expect(Math.abs(got! - want)).toBeLessThan(1e-9);
});

test.each([0.1, 0.9, 3, 7.5])('J and Y at %f keep their Wronskian 2 / (pi x) in every order', (x) => {
  const { j, y } = besselOrders(10, x);
  for (let n = 0; n < 10; n++) expect((j[n + 1]! * y[n]! - j[n]! * y[n + 1]!) * Math.PI * x).toBeCloseTo(2, 7);
});

test('air in place of a body changes no wave, of either polarization', () => {
  const air = { ...BODY, relativePermittivity: 1, conductivitySPerM: 0 };
  for (const { vertical, horizontal } of besideCylinder(air, 150, 0.5, [0, 40, 90, 180])) {
    expect(vertical).toBeCloseTo(1, 9);
    expect(horizontal).toBeCloseTo(1, 9);
  }
});

test('a metal post kills the upright field at its surface', () => {
  const metal = { radiusM: 0.15, relativePermittivity: 1, conductivitySPerM: 1e6 };
  expect(besideCylinder(metal, 150, 0.1501, [0, 90, 180]).every(({ vertical }) => vertical < 0.02)).toBe(true);
});

test('held close at 150 MHz: a vertical wave loses 7.7 dB from behind and gains from ahead, a level one changes under 2 dB', () => {
  const { vertical, horizontal } = shadowHeldClose(150);
  expect(db(vertical[180 / BODY_STEP_DEG]!)).toBeCloseTo(-7.7, 1);
  expect(db(vertical[0]!)).toBeGreaterThan(0);
  expect(horizontal.every((factor) => Math.abs(db(factor)) < 2)).toBe(true);
});

test.each([30, 40, 100, 216, 500])('the shadow at %i MHz has no step over 1 dB in 2 degrees and no wild number', (mhz) => {
  const { vertical, horizontal } = shadowHeldClose(mhz);
  for (const table of [vertical, horizontal])
    for (let i = 1; i < table.length; i++) {
      expect(Number.isFinite(table[i]!)).toBe(true);
      expect(Math.abs(table[i]! - table[i - 1]!)).toBeLessThan(0.12);
    }
});

test("the Yagi's rear lobe loses 3 dB of a vertical wave and 1.5 dB of a level one, its front nothing", () => {
  const last = 180 / BODY_STEP_DEG;
  expect(db(SHADOW_BEHIND_YAGI.vertical[last]!)).toBeCloseTo(-3, 9);
  expect(db(SHADOW_BEHIND_YAGI.horizontal[last]!)).toBeCloseTo(-1.5, 9);
  for (let i = 0; i <= last / 2; i++) expect(SHADOW_BEHIND_YAGI.vertical[i]).toBe(1);
});

test('a whip held close hears 7.7 dB less from behind; raised over the body it hears the same all round', () => {
  const fan = makeReceivingAntenna(antennaById('whip').pattern(150, 150)).fan([
    { azimuthDeg: 180, elevationDeg: 0, eastRe: 0, eastIm: 0, northRe: 0, northIm: 0, upRe: 1, upIm: 0 },
  ]);
  expect(10 * Math.log10(fan(0, 90) / fan(0, 90, true))).toBeCloseTo(-7.7, 1);
  expect(fan(0, 90, true)).toBeCloseTo(fan(90, 90, true), 9);
});
