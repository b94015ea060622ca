import type { HeardPulse } from '../ear/hear';
import type { Action } from '../run/actions';
import type { Exercise } from '../run/exercise';
import type { Practice } from '../run/record';
import type { Controls, Hold, Legs, Mark, RunState } from '../run/state';
import { timeS } from '../run/state';
import { soughtTag, type Task, taskOf } from '../run/task';
import type { Scenario } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import type { World } from '../world/world';

/** A pulse as heard, with what the walker knows of itself at that moment. */
export type HeardHere = HeardPulse & {
  readonly at: MapPoint;
  readonly headingDeg: number;
  readonly rollDeg: number;
  readonly netGainDb: number;
};

/** What the exercise shows: the map, the list of tags by frequency, the own pose. No tag's place, arrival or truth is in it. */
export type MapAndOwnPose = {
  readonly map: World;
  readonly timeS: number;
  readonly at: MapPoint;
  readonly hold: Hold;
  readonly controls: Controls;
  readonly legs: Legs;
  readonly blocked: boolean;
  readonly notebook: readonly Mark[];
  readonly wrongDeclarations: number;
  readonly tagList: readonly { readonly frequencyMHz: number; readonly pulsesPerMinute: number }[];
  /** The map shows where one stands. */
  readonly placeShown: boolean;
  readonly task: Task;
  /** Number of the tag that is asked for. */
  readonly sought: number;
  readonly kit: Scenario['kit'];
  readonly limits: Scenario['limits'];
};

/** What came since the last actions. */
export type View = { readonly heard: readonly HeardHere[]; readonly seen: MapAndOwnPose };

/** A walker at work: it is given what it hears and sees each tick and answers with what it does. Ends when it gives up. */
export type Policy = Generator<readonly Action[], void, View>;

export type Walker = {
  readonly id: string;
  /** What its logbook says of the last 28 days. */
  readonly practice: Practice;
  readonly play: (first: View, random: () => number) => Policy;
};

export function seenNow({ scenario, world }: Exercise, state: RunState): MapAndOwnPose {
  return {
    map: world,
    timeS: timeS(state),
    at: state.at,
    hold: state.hold,
    controls: state.controls,
    legs: state.legs,
    blocked: state.blocked,
    notebook: state.notebook,
    wrongDeclarations: state.declarations.filter(({ right }) => !right).length,
    tagList: scenario.tags.map(({ frequencyMHz, pulsesPerMinute }) => ({ frequencyMHz, pulsesPerMinute })),
    placeShown: scenario.aids.ownPosition,
    task: taskOf(scenario),
    sought: soughtTag(scenario),
    kit: scenario.kit,
    limits: scenario.limits,
  };
}
