import type { Antenna } from './antenna';
import { SHADOW_BEHIND_YAGI } from './body';
import { boomOf, DRIVEN, LEAST_HAND_YAGI_MHZ, type Rod, rodsAt } from './rods';
import { scaledPattern } from './scaledPattern';
import { LIGHT_MHZ_M } from './wireSolver';

/** Driven element and reflector, our own design: 6.5 dBi, 10 dB front to back. */
const RODS: readonly Rod[] = [
  { along: -0.15, length: 0.495, diameter: 0.003 },
  { along: 0, length: 0.47, diameter: 0.003, drive: DRIVEN },
];

export const yagi2: Antenna = {
  id: 'yagi2',
  name: 'Two-element hand Yagi',
  whenToTake: 'Thick cover and long days: short and light, with a broad peak and a weak back.',
  wires: (designMHz) => rodsAt(RODS)(LIGHT_MHZ_M / designMHz),
  takenUpRollDeg: 0,
  boomM: boomOf(RODS),
  onFoot: true,
  leastMHz: LEAST_HAND_YAGI_MHZ,
  pattern: scaledPattern(rodsAt(RODS), () => SHADOW_BEHIND_YAGI),
};
