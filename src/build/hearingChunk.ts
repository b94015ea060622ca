import { resolve } from 'node:path';

type Context = { readonly getModuleInfo: (id: string) => { readonly importedIds: readonly string[] } | null };

const ROOM = resolve('src/browser/listening/mountListening.tsx').replaceAll('\\', '/');
const CORE = /\/src\/core\//;

/**
 * Names the file of what the Listening room hears with: waves, antenna, receiver and ear. Cut up by who else needs which part it was a
 * dozen files, and more bytes.
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
    return CORE.test(id) && needed.has(id) ? 'hearing' : null;
  };
}
