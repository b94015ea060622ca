import { type Fault, InputFaults } from '../scenario/faults';
import { loadScenario } from '../scenario/load';
import { SCENARIO_VERSION, type Scenario } from '../scenario/schema';
import { canonicalText } from '../scenario/seal';

/** How faults name what lies on the desk. */
const FILE = 'this exercise';

/**
 * A draft as whoever it is shared with would read it: the same reader, so that no fault is met later than here. A number that was not
 * given is read as nothing there.
 */
export function readDraft(draft: Scenario): { readonly scenario: Scenario | null; readonly faults: readonly Fault[] } {
  try {
    return { scenario: loadScenario(FILE, canonicalText(draft)), faults: [] };
  } catch (fault) {
    if (fault instanceof InputFaults) return { scenario: null, faults: fault.faults };
    throw fault;
  }
}

/** Faults of a field and of all that lies in it. */
export const faultsAt = <F extends { readonly path: string }>(faults: readonly F[], field: string): readonly F[] =>
  faults.filter(({ path }) => path === field || path.startsWith(`${field}.`));

/** Can this have been a draft of the present format? What was kept by another version has to be read as a file. */
export const looksLikeDraft = (value: unknown): value is Scenario =>
  typeof value === 'object' &&
  value !== null &&
  (value as Partial<Scenario>).format === 'faintward-scenario' &&
  (value as Partial<Scenario>).version === SCENARIO_VERSION;
