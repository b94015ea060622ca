import type { Antenna } from './antenna';
import { SHADOW_BEHIND_YAGI } from './body';
import { boomOf, DRIVEN, LEAST_HAND_YAGI_MHZ, type Rod, rodsAt } from './rods';
import { scaledPattern } from './scaledPattern';
import { LIGHT_MHZ_M } from './wireSolver';

/** Our own design for the hand: 8.8 dBi, 16 dB front to back at its design frequency. */
const RODS: readonly Rod[] = [
  { along: -0.18, length: 0.495, diameter: 0.003 },
  { along: 0, length: 0.47, diameter: 0.003, drive: DRIVEN },
  { along: 0.15, length: 0.455, diameter: 0.003 },
];

export const yagi3: Antenna = {
  id: 'yagi3',
  name: 'Three-element hand Yagi',
  whenToTake: 'The everyday antenna: sharp enough for a bearing, light enough to carry all day.',
  wires: (designMHz) => rodsAt(RODS)(LIGHT_MHZ_M / designMHz),
  takenUpRollDeg: 0,
  boomM: boomOf(RODS),
  onFoot: true,
  leastMHz: LEAST_HAND_YAGI_MHZ,
  pattern: scaledPattern(rodsAt(RODS), () => SHADOW_BEHIND_YAGI),
};
