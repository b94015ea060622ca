import type { Walker } from './policy';
import { walkerWith } from './steady';

/** To this side of the sound on one leg, to the other on the next. */
const ASIDE_DEG = 65;

/** Changes course at each reading. */
export const weathercock: Walker = walkerWith('weathercock', {
  courseDeg: (supportedDeg, leg) => supportedDeg + (leg % 2 === 0 ? ASIDE_DEG : -ASIDE_DEG),
});
