import { randomFor } from '../random/draw';
import type { Scenario } from '../scenario/schema';
import { TICKS_PER_S } from './state';

/** A pulse that begins now: which tag's, its number since the start, when it begins. */
export type DuePulse = { readonly tag: number; readonly number: number; readonly atS: number };

/** Begin of pulse `number` of a tag, seconds to the millisecond. Tags start out of step with one another. */
export function pulseTimeS(scenario: Scenario, tag: number, number: number): number {
  const periodS = 60 / scenario.tags[tag]!.pulsesPerMinute;
  const phaseS = periodS * randomFor(scenario.seed, 'pulse', tag)();
  return Math.round((phaseS + number * periodS) * 1000) / 1000;
}

/** The pulses that begin within the tick [tick, tick + 1), in time order. */
export function pulsesDue(scenario: Scenario, tick: number): readonly DuePulse[] {
  const [fromS, toS] = [tick / TICKS_PER_S, (tick + 1) / TICKS_PER_S];
  const due = scenario.tags.flatMap(({ pulsesPerMinute }, tag) => {
    const periodS = 60 / pulsesPerMinute;
    const near = Math.floor((fromS - pulseTimeS(scenario, tag, 0)) / periodS);
    return [near, near + 1]
      .filter((number) => number >= 0)
      .map((number) => ({ tag, number, atS: pulseTimeS(scenario, tag, number) }))
      .filter(({ atS }) => atS >= fromS && atS < toS);
  });
  return due.sort((a, b) => a.atS - b.atS || a.tag - b.tag);
}
