import type { Antenna } from './antenna';
import { shadowHeldClose } from './body';
import { scaledPattern } from './scaledPattern';
import type { WireChain } from './wireChain';
import { LIGHT_MHZ_M } from './wireSolver';

/** Wavelengths: a quarter-wave whip, and under it the case and hand that serve as its other half. */
const WHIP = 0.24;
const CASE = 0.1;
const RADIUS = 0.0015;

/** Along the antenna's y, so that roll 90 holds it upright; the case is taken as a wire of the whip's own thickness (our choice). */
function whipOverCase(wavelengthM: number): readonly WireChain[] {
  return [
    {
      corners: [
        [0, -CASE * wavelengthM, 0],
        [0, 0, 0],
        [0, WHIP * wavelengthM, 0],
      ],
      closed: false,
      radiusM: RADIUS * wavelengthM,
      drive: { amplitude: 1, phaseDeg: 0, atCorner: 1 },
    },
  ];
}

export const whip: Antenna = {
  id: 'whip',
  name: 'Hand whip',
  whenToTake: 'Is it on the air at all, and the last metres: no direction but the shadow of your own body.',
  wires: (designMHz) => whipOverCase(LIGHT_MHZ_M / designMHz),
  takenUpRollDeg: 90,
  boomM: () => 0,
  onFoot: true,
  leastMHz: 0,
  pattern: scaledPattern(whipOverCase, shadowHeldClose),
};
