import { expect, test } from 'vitest';
import { detectionChance, heardSnrDb, normalShare } from '../../../src/core/ear/detection';
import { hearingChance, loudnessDb } from '../../../src/core/ear/hear';
import { type BestAtPlace, leastGainDb } from '../../../src/core/ear/leastGain';
import { levelStepDb, loudnessInNoise, USUAL_LISTENER } from '../../../src/core/ear/loudness';
import { receive } from '../../../src/core/receiver/receive';
import { clearestDialMHz } from '../../../src/core/receiver/tuning';

const best = (powerDbm: number, over: Partial<BestAtPlace> = {}): BestAtPlace => ({
  powerDbm,
  outsideNoiseDbm: -138,
  ownNoiseDbm: -138.2,
  buzzDbm: Number.NEGATIVE_INFINITY,
  pulseMs: 20,
  ...over,
});

// The four ranges were computed for this project: 10 mW tag at 0.5 m, Yagi at 1.7 m, 150 MHz, wet ground, in view.
test.each([
  [-84, 10, 20],
  [-112, 38, 48],
  [-99, 25, 35],
  [-127, 53, 63],
])('a best pulse of %f dBm is just heard with %f to %f dB', (powerDbm, from, to) => {
  const least = leastGainDb(best(powerDbm), USUAL_LISTENER)!;
  expect(least).toBeGreaterThanOrEqual(from);
  expect(least).toBeLessThanOrEqual(to);
});

test('at least gain one pulse is heard three times in four, with a decibel less it is not', () => {
  const place = best(-110);
  const least = leastGainDb(place, USUAL_LISTENER)!;
  const chance = (gainDb: number) => {
    const input = { ...place, isotropicDbm: -300, tagMHz: 150 };
    const received = receive(input, { gainDb, attenuatorDb: 0, tunedMHz: clearestDialMHz(150) });
    expect(loudnessDb(received, 20, USUAL_LISTENER)).toBeCloseTo(gainDb - least, 0);
    return hearingChance(received, 20, USUAL_LISTENER);
  };
  expect(chance(least)).toBeCloseTo(0.75, 2);
  expect(chance(least - 1)).toBeLessThan(0.65);
  expect(chance(least + 3)).toBeGreaterThan(0.95);
});

test('a strong tag has a negative least gain: the attenuator is needed', () => {
  expect(leastGainDb(best(-50), USUAL_LISTENER)!).toBeCloseTo(-19, 0);
});

test('under the noise no setting does it', () => {
  expect(leastGainDb(best(-145), USUAL_LISTENER)).toBeNull();
});

test('a listener whose threshold is 6 dB higher needs 6 dB more', () => {
  const usual = leastGainDb(best(-95), USUAL_LISTENER)!;
  expect(leastGainDb(best(-95), { thresholdDb: 6 })! - usual).toBeCloseTo(6, 1);
});

test('a longer pulse is heard fainter, and no signal is a false alarm once in a hundred', () => {
  expect(heardSnrDb(40)).toBeCloseTo(heardSnrDb(20) - 10 * Math.log10(2), 10);
  expect(detectionChance(-200, 20)).toBeCloseTo(0.01, 4);
  expect(normalShare(1.959963985)).toBeCloseTo(0.975, 6); // 97.5 % point of the normal distribution
});

test('loudness grows as the 0.27th power over threshold: tenfold power well above it sounds 1.86 times as loud', () => {
  expect(loudnessInNoise(0, -200) / loudnessInNoise(-10, -200)).toBeCloseTo(10 ** 0.27, 2);
  expect(loudnessInNoise(-40, -30)).toBe(0);
  expect(levelStepDb(10)).toBeGreaterThan(levelStepDb(60));
});
