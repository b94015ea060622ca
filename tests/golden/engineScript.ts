import { build, type Rolldown } from 'vite';

/** `engineAnswers.ts` as one script for any engine: it sets `Engine.digestOfStyle` and `Engine.gradeOfFile`. */
export async function engineScript(): Promise<string> {
  const built = (await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, target: 'es2022', lib: { entry: 'tests/golden/engineAnswers.ts', formats: ['iife'], name: 'Engine' } },
  })) as Rolldown.RolldownOutput[] | Rolldown.RolldownOutput;
  const [first] = Array.isArray(built) ? built : [built];
  return first!.output[0].code;
}
