import type { Antenna } from './antenna';
import { SHADOW_BEHIND_YAGI } from './body';
import { boomOf, DRIVEN, LEAST_HAND_YAGI_MHZ, type Rod, rodsAt } from './rods';
import { scaledPattern } from './scaledPattern';
import { LIGHT_MHZ_M } from './wireSolver';

/** After NBS Technical Note 688 (Viezbicke 1976), boom 0.8 wavelength, diameter 0.0085; lengths from memory, driven length our own. */
const RODS: readonly Rod[] = [
  { along: -0.2, length: 0.482, diameter: 0.0085 },
  { along: 0, length: 0.47, diameter: 0.0085, drive: DRIVEN },
  { along: 0.2, length: 0.428, diameter: 0.0085 },
  { along: 0.4, length: 0.424, diameter: 0.0085 },
  { along: 0.6, length: 0.428, diameter: 0.0085 },
];

export const yagi5: Antenna = {
  id: 'yagi5',
  name: 'Five-element long boom',
  whenToTake: 'The first bearing from a height, far away: most gain and the sharpest peak; it stays at the vehicle.',
  wires: (designMHz) => rodsAt(RODS)(LIGHT_MHZ_M / designMHz),
  takenUpRollDeg: 0,
  boomM: boomOf(RODS),
  onFoot: false,
  leastMHz: LEAST_HAND_YAGI_MHZ,
  pattern: scaledPattern(rodsAt(RODS), () => SHADOW_BEHIND_YAGI),
};
