import { complaints } from './complaints';
import { inconsistencies } from './consistency';
import { InputFaults } from './faults';
import { jsonFrom } from './jsonText';
import { mendFor } from './mends';
import { migrate } from './migrations';
import { type Scenario, scenarioSchema } from './schema';

/**
 * A scenario from the text of a file, lifted to the present version.
 * @throws InputFaults with every fault found: too large, not JSON, schema, fields that contradict each other
 */
export const loadScenario = (file: string, text: string): Scenario => scenarioFrom(file, jsonFrom(file, text));

/** The same from a value that was parsed already. */
export function scenarioFrom(file: string, value: unknown): Scenario {
  const lifted = migrate(value);
  const parsed = scenarioSchema.safeParse(lifted);
  if (!parsed.success) throw new InputFaults(complaints(file, lifted, parsed.error.issues, mendFor));
  const faults = inconsistencies(file, parsed.data);
  if (faults.length > 0) throw new InputFaults(faults);
  return parsed.data;
}
