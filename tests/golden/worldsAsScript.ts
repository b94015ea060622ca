import { build, type Rolldown } from 'vite';

/** The making of worlds as one script for any engine: it sets `Worlds.digestOfStyle`. */
export async function worldsAsScript(): Promise<string> {
  const built = (await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, target: 'es2022', lib: { entry: 'tests/golden/worldDigests.ts', formats: ['iife'], name: 'Worlds' } },
  })) as Rolldown.RolldownOutput[] | Rolldown.RolldownOutput;
  const [first] = Array.isArray(built) ? built : [built];
  return first!.output[0].code;
}
