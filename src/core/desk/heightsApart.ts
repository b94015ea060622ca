import type { Scenario } from '../scenario/schema';
import type { HistoryStep, KeptHistory } from './history';

/** A history whose steps name their own heights by number: a hundred steps on one ground would else be kept with its heights a hundred times. */
export type HeightsApart = KeptHistory<Scenario> & { readonly heights?: readonly string[] };

/** What stands in a draft in place of its heights; no packing has such a letter. */
const MARK = '#';

export function heightsApart(history: KeptHistory<Scenario>): HeightsApart {
  const numbers = new Map<string, number>();
  const apart = mapped(history, (packed) => {
    const number = numbers.get(packed) ?? numbers.size;
    numbers.set(packed, number);
    return `${MARK}${number}`;
  });
  return numbers.size === 0 ? history : { ...apart, heights: [...numbers.keys()] };
}

/** The history as it was; heights that are gone stay a mark, which the draft's own check tells as a fault. */
export function heightsTogether({ heights = [], ...history }: HeightsApart): KeptHistory<Scenario> {
  if (heights.length === 0) return history;
  return mapped(history, (packed) => (packed.startsWith(MARK) ? (heights[Number(packed.slice(MARK.length))] ?? packed) : packed));
}

function mapped({ now, past, future }: KeptHistory<Scenario>, change: (packed: string) => string): KeptHistory<Scenario> {
  const inScenario = (scenario: Scenario): Scenario => {
    const { own } = scenario.ground;
    return own ? { ...scenario, ground: { ...scenario.ground, own: { ...own, packed: change(own.packed) } } } : scenario;
  };
  const inSteps = (steps: readonly HistoryStep<Scenario>[]) => steps.map((step) => ({ ...step, value: inScenario(step.value) }));
  return { now: inScenario(now), past: inSteps(past), future: inSteps(future) };
}
