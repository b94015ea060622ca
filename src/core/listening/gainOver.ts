import type { Demonstration } from './demonstration';
import { changed } from './demonstrationDials';
import { leastGainHere } from './leastGainHere';
import type { Settings } from './settings';

/** Settings with the gain `overDb` over what is just heard there, antenna at its best; unchanged where nothing is heard at any gain. */
export function gainOver(demonstration: Demonstration, settings: Settings, overDb: number): Settings {
  const least = leastGainHere(demonstration.air(settings));
  return least === null ? settings : changed(demonstration, settings, { gainDb: least + settings.attenuatorDb + overDb });
}

/** The `overDb=…` of an address, null where it has none that is a number. */
export function overDbOf(text: string): number | null {
  const found = /(?:^|&)overDb=(-?\d{1,3})(?:&|$)/.exec(text);
  return found ? Number(found[1]) : null;
}
