import type { Walker } from './policy';
import { steady } from './steady';

/** Every walker that can be asked for by name. */
export const WALKERS: readonly Walker[] = [steady];
