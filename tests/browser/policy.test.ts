import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { builtFolder, openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { policyTroubles } from './policyWatch';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

test('page and preview server begin with nothing allowed, know no unsafe word, and enforce trusted types', async () => {
  const page = readFileSync(`${await builtFolder()}/index.html`, 'utf8');
  const inPage = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(page)![1]!.replaceAll('&#39;', "'");
  const sent = (await fetch(site.url)).headers.get('content-security-policy')!;
  for (const policy of [inPage, sent]) {
    expect(policy).toMatch(/^default-src 'none'; /);
    expect(policy).toContain("require-trusted-types-for 'script'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
  }
  expect(page.replace(/<meta http-equiv[^>]*>/, '')).not.toMatch(/<script(?![^>]* src=)|<style|\son\w+=|https?:/);
});

test('what the policy forbids does not happen, and the watch over all browser tests hears of each', async () => {
  const page = await browser.newPage();
  await page.goto(site.url);
  await page.getByRole('heading', { name: 'Faintward' }).waitFor();
  const done = await page.evaluate(async () => {
    await new Promise((later) => setTimeout(later)); // what a test evaluates at once may evaluate text, what comes later may not
    const went: string[] = [];
    const attempt = async (name: string, deed: () => unknown) => {
      try {
        await deed();
        went.push(name);
      } catch {
        // forbidden, as it is to be
      }
    };
    await attempt('text as markup', () => {
      document.body.insertAdjacentHTML('beforeend', '<i>x</i>');
    });
    await attempt('text as script', () => new Function('return 1')());
    await attempt('a foreign worker', () => new Worker('data:text/javascript,1'));
    await attempt('another policy', () =>
      (globalThis as never as { trustedTypes: { createPolicy: (n: string, r: object) => void } }).trustedTypes.createPolicy('own', {}),
    );
    await attempt('another host', () => fetch('http://localhost:9/'));
    return went;
  });
  expect(done).toEqual([]);
  await expect.poll(() => policyTroubles.length).toBeGreaterThanOrEqual(4);
  const heard = policyTroubles.splice(0).join('\n');
  for (const directive of ['require-trusted-types-for', 'trusted-types', 'connect-src']) expect(heard).toContain(directive);
  await page.close();
});
