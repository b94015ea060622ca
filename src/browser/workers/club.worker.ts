import { makeCollector } from '../../core/club/collect';
import { EMPTY_TABLE } from '../../core/club/mergeTables';
import { InputFaults } from '../../core/scenario/faults';
import { jsonFrom } from '../../core/scenario/jsonText';
import { scenarioFrom } from '../../core/scenario/load';
import type { Scenario } from '../../core/scenario/schema';
import type { FromClub, ToClub } from './clubMessages';

/** A season's table is the largest file that is read, and its rows lie deeper than a scenario's parts. */
const LIMITS = { characters: 64_000_000, nodes: 12_000_000, depth: 24 };
const collect = makeCollector();
const told = new Set<string>();

/** Replays run files and takes saved tables in, one after the other, where it can't hold the page up. */
addEventListener('message', async ({ data: { file } }: MessageEvent<ToClub>) => {
  const tell = (message: FromClub) => postMessage(message);
  try {
    const value = jsonFrom(file.name, await file.text(), LIMITS);
    const collected = collect(file.name, value);
    tell({ collected, scenario: freshScenario(value, collected.table.rows[0]?.exercise) });
  } catch (error) {
    const found = `can’t be read: ${error instanceof Error ? error.message : String(error)}`;
    const own = { file: file.name, path: '', found, mend: 'choose the file again' };
    tell({ collected: { table: EMPTY_TABLE, faults: error instanceof InputFaults ? error.faults : [own] }, scenario: null });
  }
});

/** The exercise of a run, for the map; a saved table carries none. */
function freshScenario(value: unknown, digest: string | undefined): Scenario | null {
  const inside = (value as { readonly scenario?: unknown }).scenario;
  if (digest === undefined || inside === undefined || told.has(digest)) return null;
  told.add(digest);
  return scenarioFrom('scenario', inside);
}
