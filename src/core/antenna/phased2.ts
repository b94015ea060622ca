import type { Antenna } from './antenna';
import { SHADOW_BEHIND_YAGI } from './body';
import { boomOf, DRIVEN, LEAST_HAND_YAGI_MHZ, type Rod, rodsAt } from './rods';
import { scaledPattern } from './scaledPattern';
import { LIGHT_MHZ_M } from './wireSolver';

/** Both elements driven, an eighth of a wave apart, the front one 150 degrees behind; our own design: 6.6 dBi, 24 dB front to back. */
const RODS: readonly Rod[] = [
  { along: -0.0625, length: 0.5, diameter: 0.003, drive: DRIVEN },
  { along: 0.0625, length: 0.45, diameter: 0.003, drive: { amplitude: 1, phaseDeg: -150 } },
];

export const phased2: Antenna = {
  id: 'phased2',
  name: 'Two phased elements',
  whenToTake: 'When front and back must not be mixed up: a broad peak and a deep null behind.',
  wires: (designMHz) => rodsAt(RODS)(LIGHT_MHZ_M / designMHz),
  takenUpRollDeg: 0,
  boomM: boomOf(RODS),
  onFoot: true,
  leastMHz: LEAST_HAND_YAGI_MHZ,
  pattern: scaledPattern(rodsAt(RODS), () => SHADOW_BEHIND_YAGI),
};
