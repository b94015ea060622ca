import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { ModuleKind, ScriptTarget, transpileModule } from 'typescript';
import type { Plugin } from 'vite';
import { screenSizes } from './scriptSizes.ts';
import { billOfMaterials, licencesPage, licencesStyle, suppliers } from './suppliers.ts';

/** All script of the program, its workers included, by gzip, kB of 1,000 bytes: more fails the build. */
const MOST_SCRIPT_KB = 600;

/** What a folder of the built page needs beside it: licences, bill of materials, the size limit, and the worker that keeps it offline. */
export const handOut: Plugin = {
  name: 'hand-out',
  apply: 'build',
  writeBundle: {
    order: 'post',
    sequential: true,
    handler({ dir }, bundle) {
      const folder = dir!;
      const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly version: string };
      const all = suppliers();
      const font = filesIn(folder).find((file) => /next-latin-wght-normal.*\.woff2$/.test(file));
      writeFileSync(join(folder, 'licences.html'), licencesPage(all));
      writeFileSync(join(folder, 'licences.css'), licencesStyle(font));
      writeFileSync(join(folder, 'bill-of-materials.json'), billOfMaterials(all, version));
      writeFileSync(join(folder, 'offline.js'), offlineScript(folder));
      const sizes = filesIn(folder)
        .filter((file) => file.endsWith('.js'))
        .map((file) => gzipSync(readFileSync(join(folder, file))).length);
      const kb = sizes.reduce((sum, bytes) => sum + bytes, 0) / 1000;
      if (kb > MOST_SCRIPT_KB) this.error(`${kb.toFixed(0)} kB of script by gzip, more than ${MOST_SCRIPT_KB}`);
      const { lines, over } = screenSizes(bundle);
      if (over.length > 0) this.error(over.join('; '));
      for (const line of [...lines, `all script: ${kb.toFixed(0)} kB by gzip, ${MOST_SCRIPT_KB} at most`]) this.info(line);
    },
  },
};

const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) =>
      join(parentPath, name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((file) => !/(^|\/)(offline\.js|built-by)$|\.map$/.test(file))
    .sort();

/** The service worker with the list of what it keeps; its version is the digest of all of it. */
function offlineScript(folder: string): string {
  const files = filesIn(folder);
  const digest = createHash('sha256');
  for (const file of files) digest.update(`${file}\n`).update(readFileSync(join(folder, file)));
  const source = readFileSync('src/browser/offline/serviceWorker.ts', 'utf8');
  const { outputText } = transpileModule(source, {
    compilerOptions: { target: ScriptTarget.ES2022, module: ModuleKind.ESNext, removeComments: true },
  });
  const kept = `const KEPT_VERSION = ${JSON.stringify(digest.digest('hex').slice(0, 8))};\nconst KEPT_FILES = ${JSON.stringify(files)};\n`;
  return kept + outputText.replace(/^export \{\};?\s*$/m, '');
}
