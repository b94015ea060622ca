import { randomFor } from '../random/draw';
import type { Scenario } from '../scenario/schema';
import { TICKS_PER_S } from './state';

/** A pulse that begins now: which tag's, its number since the start, when it begins. */
export type DuePulse = { readonly tag: number; readonly number: number; readonly atS: number };

/** How late each tag of a scenario begins, by tag: asked for at every tick of a run, drawn once. */
const phases = new WeakMap<Scenario, readonly number[]>();

function phaseS(scenario: Scenario, tag: number): number {
  const known =
    phases.get(scenario) ?? scenario.tags.map(({ pulsesPerMinute }, i) => (60 / pulsesPerMinute) * randomFor(scenario.seed, 'pulse', i)());
  phases.set(scenario, known);
  return known[tag]!;
}

/** Begin of pulse `number` of a tag, seconds to the millisecond. Tags start out of step with one another. */
export function pulseTimeS(scenario: Scenario, tag: number, number: number): number {
  const periodS = 60 / scenario.tags[tag]!.pulsesPerMinute;
  return Math.round((phaseS(scenario, tag) + number * periodS) * 1000) / 1000;
}

/** The pulses that begin within the tick [tick, tick + 1), in time order. */
export function pulsesDue(scenario: Scenario, tick: number): readonly DuePulse[] {
  const [fromS, toS] = [tick / TICKS_PER_S, (tick + 1) / TICKS_PER_S];
  const due: DuePulse[] = [];
  for (let tag = 0; tag < scenario.tags.length; tag++) {
    const periodS = 60 / scenario.tags[tag]!.pulsesPerMinute;
    const near = Math.floor((fromS - pulseTimeS(scenario, tag, 0)) / periodS);
    for (let number = Math.max(0, near); number <= near + 1; number++) {
      const atS = pulseTimeS(scenario, tag, number);
      if (atS >= fromS && atS < toS) due.push({ tag, number, atS });
    }
  }
  return due.sort((a, b) => a.atS - b.atS || a.tag - b.tag);
}
