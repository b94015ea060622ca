import { IDBFactory, IDBOpenDBRequest } from 'fake-indexeddb';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import { newDevice, openTab, recordOf, runAt } from './tab';

test('a store that never answers holds nothing up for longer than some seconds: the run goes on, and says that it is not kept', async () => {
  newDevice();
  globalThis.indexedDB = { open: () => new IDBOpenDBRequest() } as never;
  const tab = await openTab();
  const place = tab.takePlace();
  expect(await place.keep(runAt('Sike Moss', 20))).toBe(false);
  expect(tab.runKeeping.peek()).toBe('refused');
  expect(await tab.unfinishedRuns()).toEqual([]);
}, 20_000);

test('a store that could not be opened at first is opened later, and the run is kept whole', async () => {
  newDevice();
  const real = globalThis.indexedDB;
  globalThis.indexedDB = {
    open: () => {
      throw new DOMException('not now', 'InvalidStateError');
    },
  } as never;
  const tab = await openTab();
  const place = tab.takePlace();
  expect(await place.keep(runAt('Sike Moss', 20))).toBe(false);
  globalThis.indexedDB = real;
  expect(await place.keep(runAt('Sike Moss', 40))).toBe(true);
  expect(tab.runKeeping.peek()).toBe('');
  expect(await place.finish(recordOf('Sike Moss'))).not.toBeNull();
  expect(await tab.unfinishedRuns()).toEqual([]);
});

test('a newer version in another tab gets the store at once, and the older tab says that nothing is kept instead of breaking', async () => {
  newDevice();
  const tab = await openTab();
  const place = tab.takePlace();
  await place.keep(runAt('Sike Moss', 20));
  const newer = await openDB('faintward', 2, { upgrade: () => {} });
  expect(newer.version).toBe(2);
  expect(await place.keep(runAt('Sike Moss', 40))).toBe(false);
  expect(tab.runKeeping.peek()).toBe('refused');
  expect(await newer.getAll('unfinished')).toHaveLength(1);
  newer.close();
});

test('an upgrade that another tab blocks is waited for in vain a few seconds, and works once that tab has gone', async () => {
  globalThis.indexedDB = new IDBFactory();
  const { shelfOf } = await import('../../src/browser/storage/shelf');
  const old = await openDB('held', 1, { upgrade: (db) => void db.createObjectStore('things') });
  const shelf = shelfOf('held', 2, () => {});
  await expect(shelf()).rejects.toThrow('the store held does not open');
  old.close();
  expect((await shelf()).version).toBe(2);
}, 20_000);
