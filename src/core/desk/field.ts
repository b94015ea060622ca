import type { Scenario } from '../scenario/schema';

type Part = Readonly<Record<string, unknown>> | readonly unknown[];
const isPart = (value: unknown): value is Part => typeof value === 'object' && value !== null;
const keysOf = (path: string): readonly string[] => path.split('.');

/** What stands in a field, named as faults name it: `tags.0.eirpDbm`. `undefined` where there is none. */
export function fieldOf(scenario: Scenario, path: string): unknown {
  let at: unknown = scenario;
  for (const key of keysOf(path)) at = isPart(at) && Object.hasOwn(at, key) ? (at as Record<string, unknown>)[key] : undefined;
  return at;
}

/**
 * The exercise with another value in a field; all else is shared with the one before. `undefined` takes a field away, and out of a list.
 * The value may be out of bounds: a draft says its faults, it does not refuse them. @throws RangeError for a path that leads nowhere
 */
export const withField = (scenario: Scenario, path: string, value: unknown): Scenario =>
  Object.is(fieldOf(scenario, path), value) ? scenario : (replaced(scenario, keysOf(path), value, path) as Scenario);

function replaced(part: unknown, [key, ...rest]: readonly string[], value: unknown, path: string): Part {
  if (!isPart(part) || key === undefined) throw new RangeError(`no field ${path}`);
  if (rest.length > 0 && !Object.hasOwn(part, key)) throw new RangeError(`no field ${path}`);
  const inside = rest.length === 0 ? value : replaced((part as Record<string, unknown>)[key], rest, value, path);
  if (Array.isArray(part)) {
    const index = Number(key);
    if (!Number.isInteger(index) || index < 0 || index > part.length) throw new RangeError(`no field ${path}`);
    return inside === undefined ? part.filter((_, i) => i !== index) : Object.assign([...part], { [index]: inside });
  }
  const { [key]: _before, ...others } = part as Record<string, unknown>;
  return inside === undefined ? others : { ...part, [key]: inside };
}
