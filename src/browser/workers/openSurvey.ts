import type { SurveySetting } from '../../core/debrief/survey';
import type { Scenario } from '../../core/scenario/schema';
import type { World } from '../../core/world/world';
import { openWorker } from './openWorker';
import type { FromSurvey, LayerKind, ToSurvey } from './surveyMessages';

export type Survey = {
  /** Asks for a layer; what comes of it is told piece by piece. A new question ends the one before. */
  readonly ask: (what: LayerKind, side: number, setting: SurveySetting, told: (answer: FromSurvey) => void) => void;
  readonly close: () => void;
};

/** Surveys in a worker of their own: the waves it has worked out serve every layer. */
export function openSurvey(scenario: Scenario, world: World): Survey {
  let worker: Worker | null = null;
  let asks = 0;
  const opened = (): Worker => {
    if (worker) return worker;
    worker = openWorker('survey');
    worker.postMessage({ kind: 'open', scenario, world } satisfies ToSurvey);
    return worker;
  };
  return {
    ask(what, side, setting, told) {
      const ask = ++asks;
      const asked = opened();
      asked.onmessage = ({ data }: MessageEvent<FromSurvey>) => {
        if (data.ask === ask) told(data);
      };
      asked.onerror = (event) => {
        event.preventDefault();
        asked.terminate();
        worker = null;
        const nothing = new Float32Array(side * side).fill(Number.NaN);
        told({ ask, values: nothing, share: 1, fault: event.message || 'the work stopped' });
      };
      asked.postMessage({ kind: 'survey', ask, what, side, setting } satisfies ToSurvey);
    },
    close: () => worker?.terminate(),
  };
}
