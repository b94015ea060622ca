import type { Walker } from './policy';
import { walkerWith } from './steady';

/** Listens as the steady one does, and then walks without regard to the sound. */
export const deaf: Walker = walkerWith('deaf', { courseDeg: (_supportedDeg, _leg, random) => 360 * random(), heeds: false });
