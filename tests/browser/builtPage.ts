import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { build, type PreviewServer, preview } from 'vite';

const OUT = '../../node_modules/.cache/built-page';

/** The page as it would be handed out, on a port of its own. */
export async function openBuiltPage(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  await builtOnce();
  const server: PreviewServer = await preview({
    logLevel: 'error',
    build: { outDir: OUT },
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
  return { url: server.resolvedUrls!.local[0]!, close: () => server.close() };
}

/** The folder of the page as it would be handed out. */
export async function builtFolder(): Promise<string> {
  await builtOnce();
  return 'node_modules/.cache/built-page';
}

const STAMP = 'node_modules/.cache/built-page/built-by';

/** The test files of one run share a parent process, which builds the page before them (`buildPage.ts`): its number in the stamp says so. */
async function builtOnce(): Promise<void> {
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === String(process.ppid)) return;
  await buildPage(process.ppid);
}

/** Builds the page for the programs that this process starts, or for itself alone. */
export async function buildPage(builder: number): Promise<void> {
  // The test runner names its own environment; with that the page would carry development tools that nobody is handed.
  process.env['NODE_ENV'] = 'production';
  await build({ logLevel: 'error', build: { outDir: OUT, emptyOutDir: true } });
  writeFileSync(STAMP, String(builder));
}
