import type { Debriefing } from '../../core/debrief/debriefing';
import { openWorker } from './openWorker';
import type { FromSteady, ToSteady } from './steadyMessages';

export type OnItsWay = Omit<Extract<FromSteady, { kind: 'walking' }>, 'kind'>;

/** The steady walker's run of an exercise, from a worker of its own. */
export function steadyWalk(
  exercise: ToSteady,
  walking: (soFar: OnItsWay) => void,
): { readonly result: Promise<Debriefing>; readonly close: () => void } {
  const worker = openWorker('steady');
  const result = new Promise<Debriefing>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<FromSteady>) => {
      if (data.kind === 'walking') walking(data);
      else resolve(data.debriefing);
    };
    worker.onerror = ({ message }) => reject(new Error(`The steady walker could not be sent: ${message}`));
    worker.postMessage(exercise);
  }).finally(() => worker.terminate());
  return { result, close: () => worker.terminate() };
}
