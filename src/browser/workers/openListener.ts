import type { HeardHere, HearSetting } from '../../core/desk/hearHere';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';
import type { World } from '../../core/world/world';
import type { FromListen, ToListen } from './listenMessages';
import { openWorker } from './openWorker';

export type PlaceListener = { readonly hear: (at: MapPoint, setting: HearSetting) => void; readonly close: () => void };

/** Hears where it is sent, in a worker of its own. While it is at one place only the newest of the next ones is kept. */
export function openListener(scenario: Scenario, world: World, told: (heard: HeardHere) => void): PlaceListener {
  const worker = openWorker('listen');
  const send = (message: ToListen) => worker.postMessage(message);
  let busy = false;
  let next: ToListen | null = null;
  send({ kind: 'open', scenario, world });
  worker.onmessage = ({ data }: MessageEvent<FromListen>) => {
    told(data.heard);
    busy = next !== null;
    if (next) send(next);
    next = null;
  };
  return {
    hear(at, setting) {
      const message: ToListen = { kind: 'hear', at, setting };
      if (busy) next = message;
      else send(message);
      busy = true;
    },
    close: () => worker.terminate(),
  };
}
