import { expect, test } from 'vitest';
import { LOUDEST_START_DB, QUIETEST_DB, settings, stepVolume } from '../../src/browser/storage/settings';

test('the volume starts at a quarter of full scale at most, 12 dB under full', () => {
  expect(10 ** (settings.value.volumeDb / 20)).toBeLessThanOrEqual(0.2512);
  expect(settings.value.volumeDb).toBe(LOUDEST_START_DB);
  expect(settings.value.muted).toBe(false);
});

test('no step of the volume changes the loudness by more than 6 dB, all the way up and down; it ends at full and at -48 dB', () => {
  const way = (direction: 1 | -1) =>
    Array.from({ length: 40 }, () => {
      stepVolume(direction);
      return settings.value.volumeDb;
    });
  const [up, down] = [way(1), way(-1)];
  const all = [LOUDEST_START_DB, ...up, ...down];
  for (let i = 1; i < all.length; i++) expect(Math.abs(all[i]! - all[i - 1]!)).toBeLessThanOrEqual(6);
  expect(Math.max(...all)).toBe(0);
  expect(down.at(-1)).toBe(QUIETEST_DB);
});

test('a louder step from silence comes back at the volume one left, one step up', () => {
  settings.value = { ...settings.value, muted: true, volumeDb: -30 };
  stepVolume(1);
  expect(settings.value).toMatchObject({ muted: false, volumeDb: -27 });
});
