import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { vi } from 'vitest';
import type { StoredRun } from '../../src/browser/storage/runs';
import type { Scenario } from '../../src/core/scenario/schema';

/** One device: its store, and the locks that its tabs hold. */
export function newDevice(): void {
  globalThis.indexedDB = new IDBFactory();
  queues.clear();
}

/** Who holds and who waits for each lock, in their order, the holder first. */
const queues = new Map<string, { readonly tab: number; readonly granted: () => void }[]>();

function leaveQueues(leaves: (name: string, one: { readonly tab: number }) => boolean): void {
  for (const [name, queue] of queues) {
    const before = queue[0];
    const staying = queue.filter((one) => !leaves(name, one));
    if (staying.length === 0) queues.delete(name);
    else queues.set(name, staying);
    if (staying[0] && staying[0] !== before) staying[0].granted();
  }
}

let tabs = 0;

/** The storage of one tab: modules of its own over the store of the device. `close` is what a killed tab does: its locks go, no more. */
export async function openTab() {
  const tab = ++tabs;
  vi.resetModules();
  const locks = {
    async request(name: string, work: () => Promise<void>) {
      let mine: { readonly tab: number; readonly granted: () => void } | null = null;
      await new Promise<void>((granted) => {
        mine = { tab, granted };
        const queue = [...(queues.get(name) ?? []), mine];
        queues.set(name, queue);
        if (queue.length === 1) granted();
      });
      await work();
      leaveQueues((_, one) => one === mine);
    },
    query: async () => ({ held: [...queues.keys()].map((name) => ({ name })) }),
  };
  vi.stubGlobal('navigator', { locks });
  const [unfinished, finished, runs] = await Promise.all([
    import('../../src/browser/storage/unfinished'),
    import('../../src/browser/storage/finishedRuns'),
    import('../../src/browser/storage/runs'),
  ]);
  return {
    ...unfinished,
    ...finished,
    ...runs,
    close: () => leaveQueues((_, one) => one.tab === tab),
  };
}

export type Tab = Awaited<ReturnType<typeof openTab>>;

/** A run after so many ticks, told from another by its title: one turn of the antenna a tick, one pulse a second. */
export function runAt(title: string, tick: number): StoredRun {
  return {
    scenario: { title } as Scenario,
    log: Array.from({ length: tick }, (_, i) => ({ tick: i, action: { type: 'turn', headingDeg: i % 360 } as never })),
    pulses: Array.from({ length: Math.floor(tick / 20) }, (_, i) => ({ heard: { atS: i } }) as never),
    tick,
    thresholdDb: 0,
  };
}

export const recordOf = (title: string) => ({ title, endedAt: '2026-05-01T10:00:00Z', text: `run file of ${title}` });
