import { resolve } from 'node:path';
import type { Plugin } from 'vite';

const SCRIPT = resolve('src/browser/workers/every.worker.ts');
const ADDRESS = /new URL\('\.\/every\.worker\.ts', import\.meta\.url\)/;

/**
 * Builds the workers' script together with the page, so that both load the same files of the core: built by itself it carried a copy of
 * its own.
 */
export const sharedWorker: Plugin = {
  name: 'shared-worker',
  apply: 'build',
  enforce: 'pre',
  transform(code, id) {
    if (!ADDRESS.test(code)) return undefined;
    if (!id.replaceAll('\\', '/').endsWith('/workers/openWorker.ts')) throw new Error(`${id} opens a worker of its own`);
    const file = this.emitFile({ type: 'chunk', id: SCRIPT, name: 'every.worker' });
    return code.replace(ADDRESS, `import.meta.ROLLUP_FILE_URL_${file}`);
  },
};
