import type { AtStart } from '../../core/desk/atStart';
import type { RehearsedWalk } from '../../core/desk/rehearsedWalk';
import type { Scenario } from '../../core/scenario/schema';
import type { World } from '../../core/world/world';
import { openWorker } from './openWorker';
import type { FromRehearsal, ToRehearsal } from './rehearsalMessages';

/** Two at once: more gain little on a phone and take its memory. */
const WORKERS = 2;

export type Rehearsed = { readonly start: AtStart; readonly walks: readonly RehearsedWalk[] };
export type Rehearsing = {
  /** By seed; without a walk where it was stopped before one was over. */
  readonly result: Promise<Rehearsed | null>;
  /** Ends it with the walks that are over. */
  readonly stop: () => void;
};

/** So many walks of the steady walker in two workers; `told` hears of every walk that is over, and how far all of them are, 0 to 1. */
export function rehearse(
  scenario: Scenario,
  world: World,
  count: number,
  told: (walks: readonly RehearsedWalk[], share: number) => void,
): Rehearsing {
  const walks: RehearsedWalk[] = [];
  const onTheWay = new Map<Worker, number>();
  const lanes = Math.min(WORKERS, count);
  let start: AtStart | null = null;
  let next = 0;
  let end: (fault?: Error) => void = () => {};
  const result = new Promise<Rehearsed | null>((resolve, reject) => {
    end = (fault) => {
      for (const worker of onTheWay.keys()) worker.terminate();
      if (fault) reject(fault);
      else resolve(start && walks.length > 0 ? { start, walks: [...walks].sort((a, b) => a.seed - b.seed) } : null);
    };
  });
  const share = () => (walks.length + [...onTheWay.values()].reduce((sum, part) => sum + part, 0)) / count;
  const sendOn = (worker: Worker) => {
    onTheWay.set(worker, 0);
    if (next < count) send(worker, { kind: 'walk', seed: ++next });
    else if (walks.length === count) end();
  };
  for (let lane = 0; lane < lanes; lane++) {
    const worker = openWorker('rehearsal');
    onTheWay.set(worker, 0);
    worker.onerror = ({ message }) => end(new Error(`The steady walker could not be sent: ${message}`));
    worker.onmessage = ({ data }: MessageEvent<FromRehearsal>) => {
      if (data.kind === 'start') start = data.start;
      else if (data.kind === 'walking') onTheWay.set(worker, Math.min(0.95, data.timeS / data.usualS));
      else {
        walks.push(data.walk);
        sendOn(worker);
      }
      told(walks, share());
    };
    send(worker, { kind: 'open', scenario, world });
    if (lane === 0) send(worker, { kind: 'start' });
    sendOn(worker);
  }
  return { result, stop: () => end() };
}

const send = (worker: Worker, message: ToRehearsal) => worker.postMessage(message);
