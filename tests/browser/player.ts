import type { FileChooser, Page } from 'playwright-core';

/** A person at the keyboard: everything goes through real key presses, and reads what the page shows. */
export function playerAt(page: Page) {
  const wait = (ms: number) => page.waitForTimeout(ms);
  const hold = async (key: string, ms: number) => {
    await page.keyboard.down(key);
    await wait(ms);
    await page.keyboard.up(key);
  };
  const numberIn = async (selector: string) => Number((await page.locator(selector).textContent())!.replace(/[^0-9.-]/g, ''));
  const headingDeg = () => numberIn('.hold-number');
  return {
    wait,
    hold,
    headingDeg,
    press: (key: string) => page.keyboard.press(key),
    async openExercise(file: Parameters<FileChooser['setFiles']>[0]) {
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Open your own exercise' }).click();
      await (await chooser).setFiles(file);
      await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
    },
    async gainTo(db: number) {
      for (let tries = 0; tries < 120; tries++) {
        const off = db - (await numberIn('.gain-number'));
        if (off === 0) return;
        await page.keyboard.press(off > 0 ? 'ArrowUp' : 'ArrowDown');
        await wait(60);
      }
      throw new Error(`the gain never came to ${db} dB`);
    },
    async turnTo(deg: number) {
      for (let tries = 0; tries < 80; tries++) {
        const offDeg = ((deg - (await headingDeg()) + 540) % 360) - 180;
        if (Math.abs(offDeg) <= 3) return;
        await hold(offDeg > 0 ? 'ArrowRight' : 'ArrowLeft', Math.max(20, (Math.abs(offDeg) / 45) * 800));
      }
      throw new Error(`the antenna never came to ${deg} degrees`);
    },
  };
}
