import type { Antenna } from './antenna';
import { shadowHeldClose } from './body';
import { scaledPattern } from './scaledPattern';
import type { WireChain } from './wireChain';
import { LIGHT_MHZ_M } from './wireSolver';

/** Side and wire radius in wavelengths: a fifth of a wave round, so that copper takes under 1 dB and the lossless gain is fair. */
const SIDE = 0.05;
const WIRE_RADIUS = 0.002;

/**
 * A square in the antenna's x-y plane, fed in the middle of the side at -y: held upright (roll 90) it stands along the heading with its
 * feed at the bottom, hears vertical waves in a figure of eight and nothing of them broadside. Lossless, tuned and matched.
 */
function squareLoop(wavelengthM: number): readonly WireChain[] {
  const half = (SIDE * wavelengthM) / 2;
  return [
    {
      corners: [
        [0, -half, 0],
        [half, -half, 0],
        [half, half, 0],
        [-half, half, 0],
        [-half, -half, 0],
      ],
      closed: true,
      radiusM: WIRE_RADIUS * wavelengthM,
      drive: { amplitude: 1, phaseDeg: 0, atCorner: 0 },
    },
  ];
}

export const loop: Antenna = {
  id: 'loop',
  name: 'Small loop',
  whenToTake: 'Low frequencies and close work: two sharp nulls, front and back alike.',
  wires: (designMHz) => squareLoop(LIGHT_MHZ_M / designMHz),
  takenUpRollDeg: 90,
  boomM: (frequencyMHz) => (SIDE * 299.792458) / frequencyMHz,
  onFoot: true,
  leastMHz: 0,
  pattern: scaledPattern(squareLoop, shadowHeldClose),
};
