import type { HeardHere, HearSetting } from '../../core/desk/hearHere';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';
import type { World } from '../../core/world/world';
import type { FromListen, ToListen } from './listenMessages';
import { openWorker } from './openWorker';

export type PlaceListener = { readonly hear: (at: MapPoint, setting: HearSetting) => void; readonly close: () => void };

/** Hears where it is sent, in a worker of its own; told `null` where that worker failed. While it is at one place only the newest of the next ones is kept. */
export function openListener(scenario: Scenario, world: World, told: (heard: HeardHere | null) => void): PlaceListener {
  let worker: Worker | null = null;
  let busy = false;
  let next: ToListen | null = null;
  const send = (message: ToListen) => {
    worker ??= opened();
    worker.postMessage(message);
  };
  const opened = (): Worker => {
    const made = openWorker('listen');
    made.postMessage({ kind: 'open', scenario, world } satisfies ToListen);
    made.onmessage = ({ data }: MessageEvent<FromListen>) => {
      told(data.heard);
      busy = next !== null;
      if (next) send(next);
      next = null;
    };
    // The place that broke it is let go; the next one begins anew.
    made.onerror = (event) => {
      event.preventDefault();
      made.terminate();
      worker = null;
      busy = false;
      next = null;
      told(null);
    };
    return made;
  };
  return {
    hear(at, setting) {
      const message: ToListen = { kind: 'hear', at, setting };
      if (busy) next = message;
      else send(message);
      busy = true;
    },
    close: () => worker?.terminate(),
  };
}
