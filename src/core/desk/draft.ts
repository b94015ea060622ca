import { type Fault, InputFaults } from '../scenario/faults';
import { LARGEST_TEXT } from '../scenario/jsonText';
import { loadScenario } from '../scenario/load';
import { packedHeights } from '../scenario/ownHeights';
import { SCENARIO_VERSION, type Scenario } from '../scenario/schema';
import { canonicalText } from '../scenario/seal';

/** How faults name what lies on the desk. */
const FILE = 'this exercise';

type Reading = { readonly scenario: Scenario | null; readonly faults: readonly Fault[] };

/**
 * A draft as whoever it is shared with would read it: the same reader, so that no fault is met later than here. A number that was not
 * given is read as nothing there.
 */
export function readDraft(draft: Scenario): Reading {
  try {
    return { scenario: loadScenario(FILE, canonicalText(draft)), faults: [] };
  } catch (fault) {
    if (fault instanceof InputFaults) return { scenario: null, faults: fault.faults };
    throw fault;
  }
}

type KnownHeights = { readonly packed: string; readonly side: number; readonly flat: string };

/**
 * Reads one draft after the other. A draft is read at every letter that is typed, and a million own heights take a second to read: heights
 * that were sound in the reading before are stood in for by flat ones of as many cells.
 */
export function draftReader(): (draft: Scenario) => Reading {
  let known: KnownHeights | null = null;
  return (draft) => {
    const { own, sizeM, cellM } = draft.ground;
    const side = Math.round(sizeM / cellM);
    if (own && known?.side === side && known.packed === own.packed) {
      const stoodIn = withPacked(draft, known.flat);
      // What is left out may be what makes it longer than any file that is read.
      if (canonicalText(stoodIn).length + own.packed.length < LARGEST_TEXT / 2) {
        const { scenario, faults } = readDraft(stoodIn);
        return { scenario: scenario && withPacked(scenario, own.packed), faults };
      }
    }
    const reading = readDraft(draft);
    if (own && reading.scenario) {
      known = { packed: own.packed, side, flat: packedHeights(new Float64Array(side * side), side).packed };
    }
    return reading;
  };
}

const withPacked = (draft: Scenario, packed: string): Scenario => ({
  ...draft,
  ground: { ...draft.ground, own: { ...draft.ground.own!, packed } },
});

/** Faults of a field and of all that lies in it. */
export const faultsAt = <F extends { readonly path: string }>(faults: readonly F[], field: string): readonly F[] =>
  faults.filter(({ path }) => path === field || path.startsWith(`${field}.`));

/** Can this have been a draft of the present format? What was kept by another version has to be read as a file. */
export const looksLikeDraft = (value: unknown): value is Scenario =>
  typeof value === 'object' &&
  value !== null &&
  (value as Partial<Scenario>).format === 'faintward-scenario' &&
  (value as Partial<Scenario>).version === SCENARIO_VERSION;
