import type { Antenna } from './antenna';
import { rodsInWavelengths, scaledPattern } from './scaledWires';

/** [place on the boom, length, diameter] in wavelengths; the middle one is driven. Our own design for hand use. */
export const YAGI3_ELEMENTS = [
  [-0.18, 0.495, 0.003],
  [0, 0.47, 0.003],
  [0.15, 0.455, 0.003],
] as const;

export const yagi3: Antenna = {
  id: 'yagi3',
  name: 'Three-element hand Yagi',
  whenToTake: 'The everyday antenna: sharp enough for a bearing, light enough to carry all day.',
  boomM: (frequencyMHz) => (0.33 * 299.792458) / frequencyMHz,
  onFoot: true,
  pattern: scaledPattern(rodsInWavelengths(YAGI3_ELEMENTS, 1)),
};
