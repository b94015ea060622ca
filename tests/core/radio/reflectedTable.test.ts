import { describe, expect, test } from 'vitest';
import { flatEarthRatio, tabledEarthRatios } from '../../../src/core/radio/flatEarth';
import { GROUND, type Polarization, permittivity } from '../../../src/core/radio/ground';
import { randomFor } from '../../../src/core/random/draw';
import { magnitude, subtract } from '../../../src/core/units/complex';

/** Largest departure of the table from the closed form and the integral, as a share of the direct field, over 400 drawn ways. */
function worstShare(mhz: number, polarization: Polarization, nearestM: number): number {
  const eps = permittivity(GROUND.wet, mhz);
  const random = randomFor(`ground table ${mhz} ${polarization}`, 'terrain');
  let worst = 0;
  for (let i = 0; i < 400; i++) {
    const path = { distanceM: nearestM * (1_500 / nearestM) ** random(), h1M: 1 + 30 * random(), h2M: 0.5 + 2 * random() };
    const gap = subtract(tabledEarthRatios(eps, mhz, path)[polarization], flatEarthRatio(eps, polarization, mhz, path));
    worst = Math.max(worst, magnitude(gap));
  }
  return worst;
}

describe('what the ground sends back, from a table', () => {
  test.each([
    [30, 30, 1e-3],
    [150, 30, 1e-4],
    [433, 30, 1e-4],
    [30, 3, 5e-3],
    [150, 3, 1e-3],
  ] as const)('at %i MHz from %i m on it departs from the exact form by less than %f of the direct field', (mhz, fromM, most) => {
    expect(worstShare(mhz, 'v', fromM)).toBeLessThan(most);
    expect(worstShare(mhz, 'h', fromM)).toBeLessThan(most);
  });
});
