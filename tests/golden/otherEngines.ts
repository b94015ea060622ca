import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** No engine here takes so long for grounds and a run; what does is ended and told, ms. */
const PATIENCE_MS = 200_000;

/** A program by a variable of the environment, else by its names on this machine; `null` where there is none. */
export function programHere(variable: string, names: readonly string[]): string | null {
  const named = process.env[variable];
  if (named) return named;
  return names.find((name) => spawnSync(name, ['--version']).status === 0) ?? null;
}

/** What a program that runs scripts prints as the value of an expression. */
export function printedBy(program: string, script: string, expression: string): unknown {
  const folder = mkdtempSync(join(tmpdir(), 'faintward-engine-'));
  try {
    const file = join(folder, 'ask.js');
    writeFileSync(file, `${script}\nconsole.log(JSON.stringify(${expression}));\n`);
    const { stdout, stderr, status } = spawnSync(program, [file], { encoding: 'utf8', maxBuffer: 64e6, timeout: PATIENCE_MS });
    if (status !== 0) throw new Error(`${program} ended with ${status}: ${stderr.slice(0, 400)}`);
    return JSON.parse(stdout);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What Firefox makes of an expression: a page of this machine asks it and sends the value back. */
export async function saidByFirefox(program: string, script: string, expression: string): Promise<unknown> {
  const profile = mkdtempSync(join(tmpdir(), 'faintward-firefox-'));
  let said: (text: string) => void = () => {};
  let patience: ReturnType<typeof setTimeout> | undefined;
  const answer = new Promise<string>((resolve, reject) => {
    said = resolve;
    patience = setTimeout(() => reject(new Error(`${program} gave no answer`)), PATIENCE_MS);
  });
  const page = `<!doctype html><script src="ask.js"></script><script>fetch('said', { method: 'POST', body: JSON.stringify(${expression}) ?? 'null' })</script>`;
  const server = createServer((request, response) => {
    if (request.method === 'POST') {
      const parts: Buffer[] = [];
      request.on('data', (part: Buffer) => parts.push(part));
      request.on('end', () => {
        said(Buffer.concat(parts).toString('utf8'));
        response.end();
      });
      return;
    }
    const isScript = request.url === '/ask.js';
    response.setHeader('content-type', isScript ? 'text/javascript; charset=utf-8' : 'text/html; charset=utf-8');
    response.end(isScript ? script : page);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  const browser = spawn(program, ['--headless', '--no-remote', '--profile', profile, `http://127.0.0.1:${port}/`], {
    stdio: 'ignore',
    env: { ...process.env, HOME: profile },
  });
  try {
    return JSON.parse(await answer);
  } finally {
    clearTimeout(patience);
    browser.kill('SIGKILL');
    server.close();
    server.closeAllConnections();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
