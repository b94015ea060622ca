import type { Debriefing } from '../../core/debrief/debriefing';
import type { WaveArrow } from '../../core/debrief/lossBudget';
import type { Pulse } from '../../core/run/pulse';
import type { FromDebrief, ToDebrief } from './debriefMessages';
import { openWorker } from './openWorker';

export type GoneThrough = { readonly debriefing: Debriefing; readonly pulses: readonly Pulse[] };

type Heard = {
  /** Of the replay, 0 to 1. */
  readonly share?: (share: number) => void;
  /** Comes later, bearing by bearing. */
  readonly waves?: (number: number, arrows: readonly WaveArrow[]) => void;
};

/** Goes through a finished run in a worker of its own, which closes itself when the last bearing's waves are known. */
export function goThrough(run: ToDebrief, heard: Heard = {}): { readonly result: Promise<GoneThrough>; readonly close: () => void } {
  const worker = openWorker('debrief');
  const result = new Promise<GoneThrough>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<FromDebrief>) => {
      if (data.kind === 'share') heard.share?.(data.share);
      else if (data.kind === 'debriefing') resolve(data);
      else if (data.kind === 'waves') heard.waves?.(data.number, data.arrows);
      else worker.terminate();
    };
    worker.onerror = ({ message }) => reject(new Error(`The run could not be gone through: ${message}`));
    worker.postMessage(run);
  });
  return { result, close: () => worker.terminate() };
}
