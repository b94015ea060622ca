import type { Scenario } from '../../core/scenario/schema';
import type { FromDraw, ToDraw } from './drawMessages';
import { openWorker } from './openWorker';

export type Drawing = { readonly result: Promise<Scenario>; readonly stop: () => void };

/** An exercise drawn for a lesson in a worker of its own, rehearsed once; `told` hears how the rehearsal goes. */
export function drawAhead(
  seed: number,
  lesson: Scenario['lesson'],
  level: number,
  told: (now: Omit<Extract<FromDraw, { kind: 'rehearsing' }>, 'kind'>) => void,
): Drawing {
  const worker = openWorker('draw');
  let refuse: (fault: Error) => void = () => {};
  const result = new Promise<Scenario>((resolve, reject) => {
    refuse = reject;
    worker.onmessage = ({ data }: MessageEvent<FromDraw>) => {
      if (data.kind === 'rehearsing') told(data);
      else if (data.scenario) resolve(data.scenario);
      else reject(new Error('No exercise of this lesson and level was found by the steady walker. Draw again.'));
    };
    worker.onerror = ({ message }) => reject(new Error(`Nothing could be drawn: ${message}`));
    const message: ToDraw = { seed, lesson, level };
    worker.postMessage(message);
  }).finally(() => worker.terminate());
  return { result, stop: () => refuse(new Error('Stopped.')) };
}
