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
  const worker = openWorker('survey');
  const tell = (message: ToSurvey) => worker.postMessage(message);
  let asks = 0;
  tell({ kind: 'open', scenario, world });
  return {
    ask(what, side, setting, told) {
      const ask = ++asks;
      worker.onmessage = ({ data }: MessageEvent<FromSurvey>) => {
        if (data.ask === ask) told(data);
      };
      tell({ kind: 'survey', ask, what, side, setting });
    },
    close: () => worker.terminate(),
  };
}
