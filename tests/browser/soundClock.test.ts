import { expect, test } from 'vitest';
import { soundClock } from '../../src/browser/sound/clock';
import { randomFor } from '../../src/core/random/draw';

test('for 30 minutes pulses that are told up to 66 ms late each sound at their own time, to the sample', () => {
  const clock = soundClock(0.07);
  const random = randomFor('clock', 'test');
  let zeroS: number | null = null;
  for (let number = 0; number < 2_250; number++) {
    const atS = 0.3 + 0.8 * number;
    const tickS = Math.floor(atS / 0.05) * 0.05;
    const sinceTickS = 0.016 * random(); // told at the first frame after the tick is over
    const soundsS = clock.audioTimeS(atS, tickS + sinceTickS, 5 + tickS + 0.05 + sinceTickS);
    zeroS ??= soundsS - atS;
    expect(Math.abs(soundsS - atS - zeroS)).toBeLessThan(0.5 / 48_000);
    expect(soundsS).toBeGreaterThan(5 + tickS + 0.05 + sinceTickS + 0.03);
  }
});

test('after a halt of the page the clocks are tied anew and pulses go on at their distance', () => {
  const clock = soundClock(0.07);
  const before = clock.audioTimeS(10, 10, 20);
  expect(before).toBeCloseTo(20.07, 9);
  const after = clock.audioTimeS(10.8, 10.8, 25); // the sound card went on while the run stood still
  expect(after).toBeCloseTo(25.07, 9);
  expect(clock.audioTimeS(11.6, 11.6, 25.81) - after).toBeCloseTo(0.8, 9);
});
