import { crammer } from './crammer';
import { deaf } from './deaf';
import { fidgety1, fidgety2, fidgety3, fidgety4 } from './fidgety';
import { loudHanded6, loudHanded12, loudHanded20 } from './loudHanded';
import { lowLying } from './lowLying';
import type { Walker } from './policy';
import { rooted } from './rooted';
import { steady } from './steady';
import { weathercock } from './weathercock';

/** Every walker that can be asked for by name. */
export const WALKERS: readonly Walker[] = [
  steady,
  loudHanded6,
  loudHanded12,
  loudHanded20,
  fidgety1,
  fidgety2,
  fidgety3,
  fidgety4,
  rooted,
  deaf,
  weathercock,
  lowLying,
  crammer,
];
