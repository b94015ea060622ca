import { loadScenario } from '../../core/scenario/load';
import type { Scenario } from '../../core/scenario/schema';

/** An exercise that can be opened by name: the name is its file's, without the ending. */
export type Shipped = { readonly name: string; readonly scenario: Scenario };

const texts = import.meta.glob<string>('../../../scenarios/*.json', { query: '?raw', import: 'default', eager: true });

/** The exercises that come with the program, easiest first. A file of another format in the folder is passed over. */
export const shipped: readonly Shipped[] = Object.entries(texts)
  .flatMap(([path, text]) => {
    const name = path.slice(path.lastIndexOf('/') + 1, -'.json'.length);
    if (name.endsWith('.schema')) return [];
    try {
      return [{ name, scenario: loadScenario(`${name}.json`, text) }];
    } catch (fault) {
      console.warn(fault);
      return [];
    }
  })
  .sort((a, b) => a.scenario.level - b.scenario.level || a.scenario.title.localeCompare(b.scenario.title));
