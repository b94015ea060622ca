import { type FinishedRecord, type RunPart, runKeeping, type StoredRun, shelves } from './runs';
import { faultOf, inOneGo } from './shelf';

/** An unfinished run where it lies. */
export type KeptRun = { readonly name: string; readonly run: StoredRun; readonly keptAtMs: number };

/** Where one run is kept while it is played: every run has a place of its own, so that no tab writes over another's. */
export type RunPlace = {
  /** Keeps what was added since the last time; asked again meanwhile, only the newest asking counts. @returns whether all of it is kept */
  readonly keep: (run: StoredRun) => Promise<boolean>;
  /** Puts the finished run on the shelf and gives up the place, both or neither. @returns its key; `null` where the browser refused */
  readonly finish: (record: FinishedRecord) => Promise<number | null>;
  /** The run is not played here any longer: it may be gone on with from any tab. */
  readonly leave: () => void;
};

/** So many unfinished runs are kept beside the newest; of older ones the learner thinks no more. */
const MOST_UNFINISHED = 5;
const PART_DIGITS = 6;
const partKey = (name: string, number: number): string => `${name}/${String(number).padStart(PART_DIGITS, '0')}`;
/** All parts of a run, and the whole one that earlier versions kept under the bare name. */
const partsOf = (name: string): readonly IDBKeyRange[] => [IDBKeyRange.only(name), IDBKeyRange.bound(`${name}/`, `${name}/~`)];
const locks: LockManager | undefined = globalThis.navigator?.locks;
const lockOf = (name: string): string => `faintward-run ${name}`;

const newName = (): string => [...crypto.getRandomValues(new Uint8Array(8))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/**
 * Takes a place for a run that begins, or that goes on from `from`. The place is a new one either way: what was kept in the old one is
 * given up in the same go in which the new one first holds all of it.
 */
export function takePlace(from: KeptRun | null = null): RunPlace {
  const name = newName();
  const letGo = holdLock(name);
  let old = from?.name ?? null;
  // until it is given up no other tab is to go on with it
  const letGoOld = old === null ? () => {} : holdLock(old);
  const release = () => {
    letGo();
    letGoOld();
  };
  let [entries, pulses, parts] = [0, 0, 0];
  let [next, over] = [null as StoredRun | null, false];
  let working: Promise<boolean> | null = null;

  const write = async ({ log, pulses: heard, tick, ...head }: StoredRun): Promise<void> => {
    const db = await shelves();
    if (over) return;
    await inOneGo(db, ['unfinished'], async (go) => {
      const store = go.objectStore('unfinished');
      // Another tab may have taken the run over, or the browser cleared the shelf: then all of it is kept again.
      if (parts > 0 && (await store.getKey(partKey(name, 0))) === undefined) [entries, pulses, parts] = [0, 0, 0];
      const part = {
        log: log.slice(entries),
        pulses: heard.slice(pulses),
        tick,
        fromEntry: entries,
        fromPulse: pulses,
        keptAtMs: Date.now(),
      };
      await store.put(parts === 0 ? { ...part, head } : part, partKey(name, parts));
      if (old !== null) for (const range of partsOf(old)) await store.delete(range);
    });
    old = null;
    letGoOld();
    [entries, pulses, parts] = [log.length, heard.length, parts + 1];
  };
  const work = async (): Promise<boolean> => {
    let all = true;
    while (next && !over) {
      const run = next;
      next = null;
      try {
        await write(run);
        runKeeping.value = '';
        all = true;
      } catch (fault) {
        runKeeping.value = faultOf(fault);
        all = false;
      }
    }
    working = null;
    return all;
  };

  return {
    keep(run) {
      if (over) return Promise.resolve(true);
      next = run;
      working ??= work();
      return working;
    },
    async finish(record) {
      next = null;
      await working;
      try {
        const db = await shelves();
        const key = await inOneGo(db, ['unfinished', 'finished'], async (go) => {
          const added = await go.objectStore('finished').add(record);
          for (const given of old === null ? [name] : [name, old])
            for (const range of partsOf(given)) await go.objectStore('unfinished').delete(range);
          return added;
        });
        over = true;
        runKeeping.value = '';
        release();
        return key;
      } catch (fault) {
        runKeeping.value = faultOf(fault);
        return null;
      }
    },
    leave: release,
  };
}

/** Runs that can be gone on with, the newest first, without those that are being played in some tab. Damaged ones are passed over. */
export async function unfinishedRuns(): Promise<readonly KeptRun[]> {
  try {
    // Locks first: a run that another tab finishes meanwhile has gone from the shelf before its lock goes.
    const played = await playedNow();
    const store = (await shelves()).transaction('unfinished').store;
    const [keys, values] = await Promise.all([store.getAllKeys(), store.getAll()]);
    const byName = new Map<string, (RunPart | StoredRun)[]>();
    keys.forEach((key, i) => {
      const name = key.split('/')[0]!;
      if (!played.has(lockOf(name))) byName.set(name, [...(byName.get(name) ?? []), values[i]!]);
    });
    const runs = [...byName].map(([name, parts]) => joined(name, parts)).filter((run) => run !== null);
    return runs.sort((a, b) => b.keptAtMs - a.keptAtMs);
  } catch {
    return [];
  }
}

/** Forgets one unfinished run. */
export async function forgetUnfinished(name: string): Promise<void> {
  try {
    await inOneGo(await shelves(), ['unfinished'], async (go) => {
      for (const range of partsOf(name)) await go.objectStore('unfinished').delete(range);
    });
  } catch {
    // it stays, and can be forgotten another time
  }
}

/** Forgets what nobody goes on with: of the runs that are not being played all but the newest few. */
export async function forgetOldest(): Promise<void> {
  for (const { name } of (await unfinishedRuns()).slice(MOST_UNFINISHED)) await forgetUnfinished(name);
}

/** Parts in their order; what does not join on ends the run where it was whole. */
function joined(name: string, parts: readonly (RunPart | StoredRun)[]): KeptRun | null {
  const [first, ...more] = parts;
  if (!first || !Array.isArray(first.log) || !Array.isArray(first.pulses)) return null;
  if (!('fromEntry' in first)) return first.scenario ? { name, run: first, keptAtMs: Date.parse(first.begunAt ?? '') || 0 } : null;
  if (!first.head || first.fromEntry !== 0 || first.fromPulse !== 0) return null;
  const [log, pulses] = [[...first.log], [...first.pulses]];
  let last: RunPart = first;
  for (const part of more) {
    if (!('fromEntry' in part) || part.fromEntry !== log.length || part.fromPulse !== pulses.length) break;
    log.push(...part.log);
    pulses.push(...part.pulses);
    last = part;
  }
  return { name, run: { ...first.head, log, pulses, tick: last.tick }, keptAtMs: last.keptAtMs };
}

/** Holds a lock that ends with the tab, however it ends. Pages without locks (plain http) hold none. @returns lets go */
function holdLock(name: string): () => void {
  let letGo = () => {};
  const held = new Promise<void>((done) => {
    letGo = done;
  });
  void locks?.request(lockOf(name), () => held).catch(() => {});
  return letGo;
}

async function playedNow(): Promise<ReadonlySet<string>> {
  try {
    const { held = [] } = (await locks?.query()) ?? {};
    return new Set(held.map((lock) => lock.name ?? ''));
  } catch {
    return new Set();
  }
}
