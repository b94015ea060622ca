import { IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, test } from 'vitest';
import { newDevice, openTab, recordOf, runAt } from './tab';

const SECONDS = 12;
const TICKS = 20;
type How = 'throws' | 'undoes its transaction';
const { put, add, delete: remove } = IDBObjectStore.prototype;

afterEach(() => {
  Object.assign(IDBObjectStore.prototype, { put, add, delete: remove });
});

/** Every write of the store whose number `fails` says yes to fails. @returns how many writes there were */
function breakWrites(fails: (number: number) => boolean, how: How): () => number {
  let writes = 0;
  const broken = (real: (...given: never[]) => unknown) =>
    function (this: IDBObjectStore, ...given: never[]) {
      if (!fails(++writes)) return real.apply(this, given);
      if (how === 'throws') throw new DOMException('no room', 'QuotaExceededError');
      const request = real.apply(this, given);
      this.transaction.abort();
      return request;
    };
  Object.assign(IDBObjectStore.prototype, { put: broken(put as never), add: broken(add as never), delete: broken(remove as never) });
  return () => writes;
}

/** A run of twelve seconds, kept every second, then finished; a refused end is tried `tries` times. @returns the key, seconds kept for sure */
async function play(tries: number) {
  const tab = await openTab();
  const place = tab.takePlace();
  let keptS = 0;
  for (let s = 1; s <= SECONDS; s++) if (await place.keep(runAt('Long Rigg', s * TICKS))) keptS = s;
  let key: number | null = null;
  for (let i = 0; i < tries && key === null; i++) key = await place.finish(recordOf('Long Rigg'));
  const fault = tab.runKeeping.peek();
  tab.close();
  return { key, keptS, fault };
}

/** What the next visit finds. */
async function lookAgain() {
  Object.assign(IDBObjectStore.prototype, { put, add, delete: remove });
  const tab = await openTab();
  return { finished: await tab.recentlyFinished(9), unfinished: await tab.unfinishedRuns() };
}

describe.each<How>(['throws', 'undoes its transaction'])('a write that %s', (how) => {
  test('write N fails, for every N: the finished run lies on the shelf once, and nothing unfinished stays', async () => {
    newDevice();
    const writes = breakWrites(() => false, how);
    await play(1);
    const most = writes();
    expect(most).toBeGreaterThan(SECONDS);
    for (let n = 1; n <= most; n++) {
      newDevice();
      breakWrites((number) => number === n, how);
      const { key } = await play(2);
      const { finished, unfinished } = await lookAgain();
      expect({ n, key: key !== null, titles: finished.map(({ title }) => title), left: unfinished.length }).toEqual({
        n,
        key: true,
        titles: ['Long Rigg'],
        left: 0,
      });
    }
  });

  test('every write from N on fails, for every N: what was kept before can be gone on with, whole to that second, and the fault is told', async () => {
    for (let n = 1; n <= SECONDS + 2; n++) {
      newDevice();
      breakWrites((number) => number >= n, how);
      const { key, keptS, fault } = await play(2);
      const { finished, unfinished } = await lookAgain();
      expect([key, finished.length]).toEqual([null, 0]);
      expect(fault).toBe(how === 'throws' ? 'full' : 'refused');
      expect(keptS).toBe(Math.min(SECONDS, n - 1));
      if (keptS === 0) expect(unfinished).toEqual([]);
      else expect(unfinished.map(({ run }) => run)).toEqual([runAt('Long Rigg', keptS * TICKS)]);
    }
  });
});

test('a shelf that was cleared under a run that is being played holds all of it again a second later', async () => {
  newDevice();
  const tab = await openTab();
  const place = tab.takePlace();
  await place.keep(runAt('Long Rigg', 40));
  await (await tab.shelves()).clear('unfinished');
  await place.keep(runAt('Long Rigg', 60));
  tab.close();
  expect((await tab.unfinishedRuns()).map(({ run }) => run)).toEqual([runAt('Long Rigg', 60)]);
});

test('a run whose parts do not join on is taken as far as they do, and one without a beginning is passed over', async () => {
  newDevice();
  const tab = await openTab();
  const place = tab.takePlace();
  for (const s of [1, 2, 3, 4]) await place.keep(runAt('Long Rigg', 20 * s));
  tab.close();
  const db = await tab.shelves();
  const keys = await db.getAllKeys('unfinished');
  await db.delete('unfinished', keys[2]!);
  expect((await tab.unfinishedRuns()).map(({ run }) => run.tick)).toEqual([40]);
  await db.delete('unfinished', keys[0]!);
  await db.put('unfinished', { log: 'x' } as never, 'odd/000000');
  expect(await tab.unfinishedRuns()).toEqual([]);
});

test('the one run that an earlier version kept can still be gone on with, and its old place is given up when the new one holds it', async () => {
  newDevice();
  const tab = await openTab();
  await (await tab.shelves()).put('unfinished', runAt('Old Fold', 50), 'run');
  const [old] = await tab.unfinishedRuns();
  expect(old?.run).toEqual(runAt('Old Fold', 50));
  const place = tab.takePlace(old!);
  await place.keep(runAt('Old Fold', 70));
  tab.close();
  expect((await tab.unfinishedRuns()).map(({ run }) => run)).toEqual([runAt('Old Fold', 70)]);
});
