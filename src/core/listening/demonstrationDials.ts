import type { Demonstration } from './demonstration';
import { type Dial, GAIN, HEADING, onDial, type SettingId, type Settings } from './settings';

/** All controls of a demonstration, heading and gain first. */
export const dialsOf = (demonstration: Demonstration): readonly Dial[] => [HEADING, GAIN, ...demonstration.dials];

/** The settings after some of them were changed; a control that the demonstration lacks stays as it is. */
export function changed(demonstration: Demonstration, settings: Settings, by: Partial<Settings>): Settings {
  const next: Record<SettingId, number> = { ...settings };
  for (const dial of dialsOf(demonstration)) {
    const value = by[dial.key];
    if (value !== undefined) next[dial.key] = onDial(dial, value);
  }
  return next;
}

/** Which of the two ways the settings are, or null for neither. */
export function wayOf({ ways }: Demonstration, settings: Settings): 0 | 1 | null {
  const is = (way: 0 | 1) => Object.entries(ways[way].sets).every(([key, value]) => settings[key as SettingId] === value);
  return is(0) ? 0 : is(1) ? 1 : null;
}

/** The way that is heard next when one asks for the other one: the one that is farther from what is set now. */
export function otherWay(demonstration: Demonstration, settings: Settings): 0 | 1 {
  const now = wayOf(demonstration, settings);
  if (now !== null) return now === 0 ? 1 : 0;
  const farFrom = (way: 0 | 1) =>
    Object.entries(demonstration.ways[way].sets).reduce((sum, [key, value]) => sum + Math.abs(settings[key as SettingId] - value), 0);
  return farFrom(0) > farFrom(1) ? 0 : 1;
}
