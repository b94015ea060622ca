import { expect, test } from 'vitest';
import { limitedDb } from '../../../src/core/receiver/limiter';
import { type AtTerminal, CASE_PICKUP_DB, receive } from '../../../src/core/receiver/receive';
import { sUnits } from '../../../src/core/receiver/sMeter';
import { CLEAREST_NOTE_HZ, clearestDialMHz, pitchHz, tuningLossDb } from '../../../src/core/receiver/tuning';

const input = (over: Partial<AtTerminal> = {}): AtTerminal => ({
  powerDbm: -100,
  isotropicDbm: -108,
  tagMHz: 150.1,
  outsideNoiseDbm: -138,
  ownNoiseDbm: -138,
  buzzDbm: Number.NEGATIVE_INFINITY,
  ...over,
});
const tuned = { gainDb: 40, attenuatorDb: 0, tunedMHz: clearestDialMHz(150.1) };

test('the clearest dial gives a note of 1 kHz that nothing is taken from', () => {
  expect(pitchHz(150.1, clearestDialMHz(150.1))).toBeCloseTo(CLEAREST_NOTE_HZ, 3);
  expect(tuningLossDb(1_000)).toBe(0);
});

test('a mistuned tag is weaker inside the passband by a little, outside by its skirts', () => {
  expect(tuningLossDb(2_000)).toBeCloseTo(2, 10); // one octave up
  expect(tuningLossDb(500)).toBeCloseTo(2, 10);
  expect(tuningLossDb(100)).toBeGreaterThan(tuningLossDb(300) + 19);
  expect(tuningLossDb(4_800)).toBeGreaterThan(tuningLossDb(2_800) + 90 - 10);
  for (let hz = 0; hz < 6_000; hz += 10) expect(Math.abs(tuningLossDb(hz + 10) - tuningLossDb(hz))).toBeLessThan(1.2);
});

test('10 dB of attenuator take what 10 dB of gain give, while the receiver is far from its ceiling', () => {
  const plain = receive(input(), tuned);
  const attenuated = receive(input(), { ...tuned, gainDb: 50, attenuatorDb: 10 });
  expect(attenuated.levelDb).toBeCloseTo(plain.levelDb, 1);
});

test('the attenuator takes outside noise but not the receiver’s own', () => {
  const noisy = input({ outsideNoiseDbm: -120, ownNoiseDbm: -140 });
  expect(receive(noisy, tuned).noiseDb - receive(noisy, { ...tuned, attenuatorDb: 10 }).noiseDb).toBeGreaterThan(9.4);
  const own = input({ outsideNoiseDbm: -160, ownNoiseDbm: -120 });
  expect(receive(own, tuned).noiseDb - receive(own, { ...tuned, attenuatorDb: 10 }).noiseDb).toBeLessThan(0.1);
});

test('no automatic gain: a stronger pulse leaves the noise as it was', () => {
  expect(receive(input({ powerDbm: -40 }), tuned).noiseDb).toBe(receive(input(), tuned).noiseDb);
});

test('the case hears a strong tag whatever the antenna does', () => {
  const near = input({ powerDbm: -200, isotropicDbm: -30 });
  const weak = receive(near, { ...tuned, gainDb: 0 });
  expect(weak.driveDb).toBeCloseTo(-30 + CASE_PICKUP_DB + 14, 6);
  expect(receive(near, { ...tuned, gainDb: 0, attenuatorDb: 30 }).driveDb).toBeCloseTo(weak.driveDb, 6);
});

test('the limiter gives way smoothly: 3 dB down where it is driven to its ceiling, flat out from there', () => {
  expect(limitedDb(0)).toBeCloseTo(-10 * Math.log10(2), 10);
  expect(limitedDb(-40)).toBeCloseTo(-40, 3);
  expect(limitedDb(40)).toBeCloseTo(0, 3);
  const at = (gainDb: number) => receive(input({ powerDbm: -80, isotropicDbm: -200 }), { ...tuned, gainDb });
  expect(at(66.1).flatOut).toBe(true);
  expect(at(65.9).flatOut).toBe(false);
});

test('the S-meter sits behind gain and attenuator, is pinned at its end and rests at nothing', () => {
  expect(sUnits(-93, 90)).toBe(9);
  expect(sUnits(-93, 84)).toBe(8);
  expect(sUnits(-20, 90)).toBeCloseTo(9 + 20 / 6, 10);
  expect(sUnits(-160, 90)).toBe(0);
});
