import { cpSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { join, normalize } from 'node:path';
import { builtFolder } from './builtPage';

const KINDS: Readonly<Record<string, string>> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  svg: 'image/svg+xml',
  png: 'image/png',
  woff2: 'font/woff2',
  json: 'application/json',
  webmanifest: 'application/manifest+json',
};
const BELOW = '/club/night/';

/** A copy of the built page on a plain file server that sends no headers of ours, in a folder below its root. */
export async function openFolderSite(name: string) {
  const folder = `node_modules/.cache/${name}`;
  rmSync(folder, { recursive: true, force: true });
  cpSync(await builtFolder(), folder, { recursive: true });
  let server: Server;
  const listen = (port: number) =>
    new Promise<number>((done) => {
      server = createServer(({ url }, answer) => {
        const path = decodeURIComponent(new URL(url!, 'http://x').pathname);
        const file = join(folder, normalize(path.slice(BELOW.length) || 'index.html'));
        if (!path.startsWith(BELOW) || !statSync(file, { throwIfNoEntry: false })?.isFile()) return answer.writeHead(404).end();
        return answer.writeHead(200, { 'Content-Type': KINDS[file.split('.').at(-1)!] ?? 'text/plain' }).end(readFileSync(file));
      });
      server.listen(port, '127.0.0.1', () => done((server.address() as { port: number }).port));
    });
  const port = await listen(0);
  const cut = () =>
    new Promise<void>((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return {
    url: `http://127.0.0.1:${port}${BELOW}`,
    cut,
    mend: () => listen(port),
    change: (file: string, by: (text: string) => string) => writeFileSync(join(folder, file), by(readFileSync(join(folder, file), 'utf8'))),
  };
}
