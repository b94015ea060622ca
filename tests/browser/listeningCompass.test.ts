import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** A phone whose browser gives the compass as `leave` says: asks and grants, asks and denies, or does not ask. */
async function phoneThat(leave: 'grants' | 'denies' | 'asks nothing'): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, locale: 'en-US', hasTouch: true, isMobile: true });
  const answer = leave === 'grants' ? 'granted' : 'denied';
  if (leave !== 'asks nothing')
    await page.addInitScript(
      `DeviceOrientationEvent.requestPermission = () => { window.askedInGesture = navigator.userActivation.isActive; return Promise.resolve('${answer}'); };`,
    );
  await page.goto(`${site.url}#/listen/back-signal`);
  await page.locator('.room-gate').tap();
  return page;
}

const compass = (page: Page) => page.getByRole('button', { name: 'Turn with the phone' });
const heading = async (page: Page) => Number(await page.locator('.room-ring').getAttribute('aria-valuenow'));
/** The phone as it lies `clockwiseDeg` from north: alpha counts the other way. */
async function turnTo(page: Page, clockwiseDeg: number): Promise<void> {
  await page.evaluate(
    `dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { absolute: true, alpha: ${(360 - clockwiseDeg) % 360}, beta: 0, gamma: 0 }))`,
  );
  await page.waitForTimeout(60);
}

test('leave is asked in the gesture; the phone’s first way is ahead, and turning it by 90 degrees turns the antenna by 90 either way', async () => {
  const page = await phoneThat('grants');
  await compass(page).tap();
  expect(await page.evaluate('window.askedInGesture')).toBe(true);
  const headings: number[] = [];
  for (const deg of [200, 290, 110, 200]) {
    await turnTo(page, deg);
    headings.push(await heading(page));
  }
  expect(headings).toEqual([0, 90, 270, 0]);
  expect(await compass(page).getAttribute('aria-pressed')).toBe('true');
  await compass(page).tap();
  await turnTo(page, 20);
  expect(await heading(page)).toBe(0);
  await page.close();
});

test('where leave is denied the room says how to give it, and the thumb still turns the antenna', async () => {
  const page = await phoneThat('denies');
  await compass(page).tap();
  await page.getByText('Allow motion and orientation for this page').waitFor();
  expect(await compass(page).getAttribute('aria-pressed')).toBe('false');
  const box = (await page.locator('.room-ring').boundingBox())!;
  await page.touchscreen.tap(box.x + box.width - 20, box.y + box.height / 2);
  expect(Math.abs((await heading(page)) - 90)).toBeLessThan(4);
  await page.close();
});

test('a device that never answers is said to have no compass, after a second and a half', async () => {
  const page = await phoneThat('asks nothing');
  await compass(page).tap();
  await page.getByText('No compass answers on this device').waitFor({ timeout: 10_000 });
  expect(await compass(page).getAttribute('aria-pressed')).toBe('false');
  await page.close();
});
