import { existsSync } from 'node:fs';
import { build, type PreviewServer, preview } from 'vite';

const OUT = '../../node_modules/.cache/built-page';

/** The page as it would be handed out, on a port of its own. `built` keeps one build for all test files of a run. */
export async function openBuiltPage(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  await builtOnce();
  const server: PreviewServer = await preview({
    logLevel: 'error',
    build: { outDir: OUT },
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
  return { url: server.resolvedUrls!.local[0]!, close: () => server.close() };
}

async function builtOnce(): Promise<void> {
  if (process.env['BUILT_PAGE'] === String(process.ppid) && existsSync('node_modules/.cache/built-page/index.html')) return;
  await build({ logLevel: 'error', build: { outDir: OUT, emptyOutDir: true } });
  process.env['BUILT_PAGE'] = String(process.ppid);
}
