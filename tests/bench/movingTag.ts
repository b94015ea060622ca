import { openBuiltPage } from '../browser/builtPage';
import { openChromium } from '../browser/chromium';
import { playerAt } from '../browser/player';
import type { Figure } from './figure';

const EXERCISE = 'scenarios/wandering-tag.json';
/** So long a walk, the antenna turning, seconds. */
const WALK_S = 90;

/** Notes in the page what holds up its own thread, and the time between frames. */
const WATCH = `{
  window.seen = { tasks: [], frames: [] };
  new PerformanceObserver((list) => { for (const { duration } of list.getEntries()) window.seen.tasks.push(duration); }).observe({ type: 'longtask' });
  let last = performance.now();
  const frame = () => {
    const now = performance.now();
    window.seen.frames.push(now - last);
    last = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}`;

type Seen = { readonly tasks: readonly number[]; readonly frames: readonly number[] };

/**
 * A tag on its way in a real browser: how long the page's own thread is held up while a learner walks and turns the antenna. Built page needed (`npm run build`).
 */
export async function figures(): Promise<readonly Figure[]> {
  const [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  try {
    const page = await (await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' })).newPage();
    await page.goto(site.url);
    const from = performance.now();
    const player = playerAt(page);
    await player.openExercise(EXERCISE);
    const readyMs = performance.now() - from;
    await page.evaluate(WATCH);
    await player.press('x');
    await player.press(' ');
    for (let s = 0; s < WALK_S; s += 6) {
      await player.hold('ArrowRight', 2_500);
      await player.wait(500);
      await player.hold('ArrowLeft', 2_500);
      await player.wait(500);
    }
    const { tasks, frames } = (await page.evaluate('window.seen')) as Seen;
    const sorted = [...frames].sort((a, b) => a - b);
    return [
      { name: 'moving tag in the browser: exercise opened', unit: 'ms', value: readyMs, goal: 3_000 },
      { name: `moving tag: longest hold-up of the page in ${WALK_S} s`, unit: 'ms', value: Math.max(0, ...tasks), goal: 100 },
      { name: 'moving tag: between two frames, 99 of 100', unit: 'ms', value: sorted[Math.floor(0.99 * sorted.length)] ?? 0, goal: 50 },
    ];
  } finally {
    await browser.close();
    await site.close();
  }
}

if (process.argv[1]?.endsWith('movingTag.ts'))
  for (const { name, unit, value, goal } of await figures()) console.log(`${name}: ${value.toFixed(0)} ${unit} (goal ${goal})`);
