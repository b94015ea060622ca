import { resolve } from 'node:path';

type Context = { readonly getModuleInfo: (id: string) => { readonly importedIds: readonly string[] } | null };

const ROOM = resolve('src/browser/listening/mountListening.tsx').replaceAll('\\', '/');
const CORE = /\/src\/core\//;
const CONTROLS = /\/src\/browser\/(controls|sound)\//;

/**
 * Names the files of what the Listening room hears with (waves, antenna, receiver and ear) and of the controls that it shares with other
 * screens. Cut up by who else needs which part they were a dozen files, and more bytes.
 */
export function hearing(): (id: string, context: Context) => string | null {
  const needed = new Set<string>();
  const gather = (id: string, context: Context) => {
    for (const imported of context.getModuleInfo(id)?.importedIds ?? []) {
      if (needed.has(imported)) continue;
      needed.add(imported);
      gather(imported, context);
    }
  };
  return (id, context) => {
    if (needed.size === 0) gather(ROOM, context);
    if (!needed.has(id)) return null;
    return CORE.test(id) ? 'hearing' : CONTROLS.test(id) ? 'controls' : null;
  };
}
