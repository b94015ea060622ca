import { antennaById } from '../../core/antenna/catalogue';
import { makeReceivingAntenna } from '../../core/antenna/orientation';
import type { Wave } from '../../core/radio/wave';

/** A hand Yagi for 150 MHz. */
export const yagi = makeReceivingAntenna(antennaById('yagi3').pattern(150.1, 150));

/** What a hand Yagi hears most of, best of flat, slanting and upright: heading in degrees, and power. */
export function loudest(waves: readonly Wave[], stepDeg = 3): { readonly headingDeg: number; readonly power: number } {
  const hears = yagi.fan(waves);
  let [power, headingDeg] = [-1, 0];
  for (const roll of [0, 45, 90])
    for (let deg = 0; deg < 360; deg += stepDeg) {
      const value = hears(deg, roll);
      if (value > power) [power, headingDeg] = [value, deg];
    }
  return { headingDeg, power };
}

/** Share of a list that is so. */
export const share = (list: readonly boolean[]): number => list.filter(Boolean).length / list.length;

export const percent = (list: readonly boolean[]): string => (list.length === 0 ? '–' : `${Math.round(100 * share(list))} %`);
