import { z } from 'zod';
import { scenarioSchema } from './schema';

/** The format as JSON Schema 2020-12, for editors and other programs. */
export const scenarioJsonSchema = (): object => ({
  ...z.toJSONSchema(scenarioSchema, { target: 'draft-2020-12' }),
  title: 'Faintward scenario, version 1',
});
