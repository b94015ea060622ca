import { writeFileSync } from 'node:fs';
import { scenarioJsonSchema } from '../core/scenario/jsonSchema';

// Run after a change of the scenario format; a test compares the file with what the program has.
writeFileSync('scenarios/scenario.schema.json', `${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`);
