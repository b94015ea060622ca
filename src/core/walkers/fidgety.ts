import type { Walker } from './policy';
import { walkerWith } from './steady';

/** Turns the knob in the middle of so many of every four sweeps, spread over both the wide and the narrow ones. */
export const fidgetsIn =
  (ofFour: number) =>
  (sweep: number): boolean =>
    [0, 3, 1, 2].indexOf(sweep % 4) < ofFour;

const fidgety = (ofFour: number): Walker => walkerWith(`fidgety-${ofFour}`, { fidgetsIn: fidgetsIn(ofFour) });

export const fidgety1 = fidgety(1);
export const fidgety2 = fidgety(2);
export const fidgety3 = fidgety(3);
export const fidgety4 = fidgety(4);
