import { expect, test } from 'vitest';
import { randomFor } from '../../src/core/random/draw';
import { newDevice, openTab, recordOf, runAt, type Tab } from './tab';

const INTERLEAVINGS = 200;
const DEEDS = 40;

type Place = ReturnType<Tab['takePlace']>;
/** What one tab has open: a run of a title, so far as it has been played and kept. */
type Open = { readonly title: string; readonly place: Place; tick: number };

/** Two people's tabs on one device do what comes to their minds, with answers of the store between. What must be there at the end. */
async function live(seed: string) {
  newDevice();
  const random = randomFor(seed, 'test');
  const pick = (n: number) => Math.floor(random() * n);
  const tabs = [await openTab(), await openTab()];
  const open: (Open | null)[] = [null, null];
  /** Ticks surely kept of each unfinished run, and the titles that were finished. */
  const keptTick = new Map<string, number>();
  const finished: string[] = [];
  let runs = 0;
  const under: Promise<unknown>[] = [];
  const go = (work: Promise<unknown>) => under.push(work);
  const keep = (mine: Open) => {
    mine.tick += 20;
    const { title, tick, place } = mine;
    go(place.keep(runAt(title, tick)).then(() => keptTick.set(title, Math.max(tick, keptTick.get(title) ?? 0))));
  };
  for (let i = 0; i < DEEDS; i++) {
    const at = pick(2);
    const tab = tabs[at]!;
    const mine = open[at]!;
    const deed = pick(10);
    if (!mine) {
      const older =
        deed < 4 ? (await tab.unfinishedRuns()).filter(({ run }) => open.every((other) => other?.title !== run.scenario.title)) : [];
      const from = older[pick(older.length)] ?? null;
      const title = from?.run.scenario.title ?? `run ${++runs}`;
      open[at] = { title, place: tab.takePlace(from), tick: from?.run.tick ?? 0 };
      keep(open[at]);
    } else if (deed < 6) keep(mine);
    else if (deed < 7) {
      await Promise.all(under.splice(0));
      mine.place.leave();
      open[at] = null;
    } else if (deed < 9) {
      finished.push(mine.title);
      go(mine.place.finish(recordOf(mine.title)).then((key) => expect(key).not.toBeNull()));
      open[at] = null;
    } else if (deed === 9) {
      // killed and opened anew: what was under way may be kept or not
      await Promise.all(under.splice(0));
      tab.close();
      tabs[at] = await openTab();
      open[at] = null;
    }
    for (let turns = pick(3); turns > 0; turns--) await new Promise((done) => setImmediate(done));
  }
  await Promise.all(under);
  for (const tab of tabs) tab.close();
  const last = await openTab();
  const unfinished = await last.unfinishedRuns();
  const lines = await last.recentlyFinished(1_000);
  for (const title of finished) keptTick.delete(title);
  return { unfinished, titles: lines.map(({ title }) => title), finished, keptTick };
}

test(`${INTERLEAVINGS} interleavings of two tabs: every finished run lies on the shelf once, every other is whole to its last kept second`, async () => {
  let [ended, left] = [0, 0];
  for (let i = 0; i < INTERLEAVINGS; i++) {
    const { unfinished, titles, finished, keptTick } = await live(`two tabs ${i}`);
    expect([...titles].sort(), `shelf of interleaving ${i}`).toEqual([...finished].sort());
    expect(Object.fromEntries(unfinished.map(({ run }) => [run.scenario.title, run.tick])), `unfinished of interleaving ${i}`).toEqual(
      Object.fromEntries(keptTick),
    );
    for (const { run } of unfinished) expect(run).toEqual(runAt(run.scenario.title, run.tick));
    ended += finished.length;
    left += keptTick.size;
  }
  expect(ended).toBeGreaterThan(4 * INTERLEAVINGS);
  expect(left).toBeGreaterThan(INTERLEAVINGS);
});
