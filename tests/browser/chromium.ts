import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { watched } from './policyWatch';

/** A browser from `$BROWSER_PATH`, else the one inside an npm package, else the system's: tests need no installation of their own. */
export async function openChromium(extraArgs: readonly string[] = []): Promise<Browser> {
  const browser = await chromium.launch({
    executablePath: await browserPath(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-software-rasterizer', '--autoplay-policy=user-gesture-required', ...extraArgs],
    env: { ...process.env, LANG: 'en_US.UTF-8' } as Record<string, string>,
  });
  return watched(browser);
}

export async function browserPath(): Promise<string> {
  const named = process.env['BROWSER_PATH'];
  if (named) return named;
  const unpackInto = resolve('node_modules/.cache/chromium');
  mkdirSync(unpackInto, { recursive: true });
  process.env['TMPDIR'] = unpackInto;
  process.env['FONTCONFIG_PATH'] = fontsIn(unpackInto);
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs22.x'; // before the import: makes it unpack its own libraries
  try {
    const { default: pack } = await import('@sparticuz/chromium');
    return await pack.executablePath();
  } catch (fault) {
    if (existsSync('/usr/bin/chromium')) return '/usr/bin/chromium';
    throw fault;
  }
}

/** The package's own font list looks under /tmp only; without one font Chromium draws no text at all. */
function fontsIn(unpackInto: string): string {
  const folder = join(unpackInto, 'font-list');
  mkdirSync(folder, { recursive: true });
  const list = `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${join(unpackInto, 'fonts')}</dir><cachedir>${join(folder, 'cache')}</cachedir></fontconfig>`;
  writeFileSync(join(folder, 'fonts.conf'), list);
  return folder;
}
