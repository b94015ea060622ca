import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

const EXERCISE = 'tests/browser/short-walk.json';
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** A gamepad of the standard layout that the test moves. */
const STUBBED_GAMEPAD = `
  window.pad = { connected: true, mapping: 'standard', axes: [0, 0, 0, 0], buttons: Array.from({ length: 16 }, () => ({ pressed: false, value: 0 })) };
  navigator.getGamepads = () => [window.pad];
`;
const sticks = (page: Page, axes: readonly number[]) => page.evaluate(`window.pad.axes = ${JSON.stringify(axes)}`);
const button = (page: Page, at: number, value: number) =>
  page.evaluate(`window.pad.buttons[${at}] = { pressed: ${value} > 0.5, value: ${value} }`);
const tapButton = async (page: Page, at: number) => {
  await button(page, at, 1);
  await page.waitForTimeout(120);
  await button(page, at, 0);
  await page.waitForTimeout(120);
};
const walkedM = (page: Page) =>
  page.evaluate(() => Number.parseFloat(document.querySelector('.bar-walked')!.textContent!.replace(/[^0-9.]/g, '')));
const gainDb = async (page: Page) => Number(await page.locator('.gain-number').textContent());
const headingDeg = (page: Page) => playerAt(page).headingDeg();

test('a whole exercise goes by gamepad: triggers set the gain, the right stick turns, a button marks, the left stick walks to the find', async () => {
  const page = await browser.newPage({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  await page.addInitScript(STUBBED_GAMEPAD);
  await page.goto(site.url);
  await playerAt(page).openExercise(EXERCISE);
  const before = await gainDb(page);
  await button(page, 6, 0.8); // left trigger
  await page.waitForFunction((db) => Number(document.querySelector('.gain-number')!.textContent) <= db, Math.min(30, before - 5), {
    timeout: 30_000,
  });
  await button(page, 6, 0);
  await sticks(page, [0, 0, 0.75, 0]);
  await page.waitForFunction(() => Math.abs(Number.parseFloat(document.querySelector('.hold-number')!.textContent!) - 45) < 6, null, {
    timeout: 30_000,
    polling: 30,
  });
  await sticks(page, [0.05, -0.05, 0.1, 0]); // a stick that rests a little off its middle does nothing
  await page.waitForTimeout(200);
  const still = await headingDeg(page);
  await page.waitForTimeout(400);
  expect(await headingDeg(page)).toBe(still);
  await tapButton(page, 0);
  expect(await page.locator('.notebook-line').count()).toBe(1);
  await sticks(page, [0.71, -0.71, 0, 0]);
  await page.waitForFunction(
    () => Number.parseFloat(document.querySelector('.bar-walked')!.textContent!.replace(/[^0-9.]/g, '')) >= 92,
    null,
    { timeout: 120_000 },
  );
  await sticks(page, [0, 0, 0, 0]);
  await page.waitForTimeout(200);
  const stood = await walkedM(page);
  await page.waitForTimeout(500);
  expect(await walkedM(page)).toBe(stood);
  await tapButton(page, 9); // start: at rest, and on again by the lower button
  await page.locator('.sheet').waitFor();
  await tapButton(page, 0);
  await page.locator('.sheet').waitFor({ state: 'detached' });
  await tapButton(page, 3);
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor({ timeout: 20_000 });
  await page.close();
});

test('a key and a button are chosen anew, swap with who had them, work at once and after a reload; turn speed is kept too', async () => {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  const page = await context.newPage();
  await page.addInitScript(STUBBED_GAMEPAD);
  await page.goto(site.url);
  const player = playerAt(page);
  await player.openExercise(EXERCISE);
  await tapButton(page, 9);
  await page.locator('.sheet').waitFor();
  await page.getByRole('button', { name: /^mark the bearing: M\./ }).click();
  await player.press('r');
  await page.getByRole('button', { name: /^mark the bearing: R\./ }).waitFor();
  await page.getByRole('button', { name: /^antenna flat or upright: M\./ }).waitFor();
  await page.getByRole('button', { name: /^mark the bearing: lower of the gamepad/ }).click();
  await tapButton(page, 2);
  await page.getByRole('button', { name: /^mark the bearing: left of the gamepad/ }).waitFor();
  await page.getByRole('button', { name: '110', exact: true }).click();
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await tapButton(page, 2);
  await page.locator('.sheet').waitFor({ state: 'detached' });
  await player.press('r');
  await page.locator('.notebook-line').first().waitFor();
  expect(await page.locator('.notebook-line').count()).toBe(1);
  await tapButton(page, 2);
  expect(await page.locator('.notebook-line').count()).toBe(2);
  await page.reload();
  await page.goto(`${site.url}#/`);
  await player.openExercise(EXERCISE);
  await player.press('r');
  await page.locator('.notebook-line').first().waitFor();
  expect(await page.locator('.notebook-line').count()).toBe(1);
  expect(await page.evaluate(() => JSON.parse(localStorage.getItem('faintward-hands')!).turnDegPerS)).toBe(110);
  await context.close();
});

/** A phone whose browser asks for leave and gets this answer; `null` does not ask. */
async function phone(answer: 'granted' | 'denied' | null): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, locale: 'en-US', hasTouch: true, isMobile: true });
  if (answer) {
    await page.addInitScript(
      `DeviceOrientationEvent.requestPermission = () => { window.askedInGesture = navigator.userActivation.isActive; return Promise.resolve('${answer}'); };`,
    );
  }
  await page.goto(site.url);
  await playerAt(page).openExercise(EXERCISE);
  await page.getByRole('button', { name: 'Put the task away' }).tap();
  return page;
}
const compass = (page: Page) => page.getByRole('button', { name: 'Turn the antenna with the phone' });
/** The phone turned clockwise from north; it lies flat, or stands upright with its back ahead. */
async function turnPhone(page: Page, clockwiseDeg: number, beta = 0): Promise<void> {
  const alpha = (360 - clockwiseDeg) % 360;
  await page.evaluate(
    `dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { absolute: true, alpha: ${alpha}, beta: ${beta}, gamma: 0 }))`,
  );
  await page.waitForTimeout(150);
}

test('the phone is the antenna: leave asked in the gesture, held flat or upright, north called once and kept for the next time', async () => {
  const page = await phone('granted');
  await compass(page).tap();
  expect(await page.evaluate('window.askedInGesture')).toBe(true);
  const first = await headingDeg(page);
  await turnPhone(page, 200);
  expect(await headingDeg(page)).toBe(first);
  await turnPhone(page, 230);
  expect(await headingDeg(page)).toBe((first + 30) % 360);
  await page.getByRole('button', { name: 'The phone points to the map’s north now' }).tap();
  await page.waitForTimeout(150);
  expect(await headingDeg(page)).toBe(0);
  await turnPhone(page, 320, 60);
  expect(await headingDeg(page)).toBe(90);
  await turnPhone(page, 140, 85);
  expect(await headingDeg(page)).toBe(270);
  await compass(page).tap();
  await turnPhone(page, 10);
  expect(await headingDeg(page)).toBe(270);
  await compass(page).tap();
  await turnPhone(page, 230);
  expect(await headingDeg(page)).toBe(0);
  await page.close();
});

test('a compass that is denied says how to allow it, one that never answers is said to be absent, and the dial still turns', async () => {
  const denied = await phone('denied');
  await compass(denied).tap();
  await denied.getByText('Allow motion and orientation for this page').waitFor();
  const box = (await denied.locator('.dial').boundingBox())!;
  await denied.touchscreen.tap(box.x + box.width - 20, box.y + box.height / 2);
  await denied.waitForTimeout(150);
  expect(Math.abs((await headingDeg(denied)) - 90)).toBeLessThan(4);
  await denied.close();
  const absent = await phone(null);
  await compass(absent).tap();
  await absent.getByText('No compass answers on this device').waitFor({ timeout: 10_000 });
  expect(await compass(absent).getAttribute('aria-pressed')).toBe('false');
  await absent.close();
});
