import { seesTag, surveyAt, surveyOrder, surveyPlace } from '../../core/debrief/survey';
import { type Exercise, openExercise } from '../../core/run/exercise';
import { tagAt } from '../../core/run/tagMotion';
import type { FromSurvey, ToSurvey } from './surveyMessages';

/** Something is told about so often, ms; between two tellings a new question is heard. */
const TELL_EVERY_MS = 250;

let exercise: Exercise | null = null;
let current = 0;

addEventListener('message', ({ data }: MessageEvent<ToSurvey>) => {
  if (data.kind === 'open') {
    exercise = openExercise(data.scenario, data.world);
    return;
  }
  current = data.ask;
  void survey(data);
});

/** Coarse to fine: cells that are not worked out yet take the value of the coarser square they lie in. */
async function survey({ ask, what, side, setting }: Extract<ToSurvey, { kind: 'survey' }>): Promise<void> {
  const { sizeM } = exercise!.scenario.ground;
  const place = tagAt(exercise!.scenario, setting.tag, setting.timeS);
  const values = new Float32Array(side * side).fill(Number.NaN);
  const order = surveyOrder(side);
  const known = new Uint8Array(side * side);
  let toldMs = performance.now();
  for (let i = 0; i < order.length; i++) {
    const cell = order[i]!;
    const at = surveyPlace(side, sizeM, cell);
    const value = what === 'sight' ? Number(seesTag(exercise!, at, setting.tag, place)) : surveyAt(exercise!, what, at, setting);
    values[cell] = value ?? Number.NaN;
    known[cell] = 1;
    if (performance.now() - toldMs < TELL_EVERY_MS && i + 1 < order.length) continue;
    const answer: FromSurvey = { ask, values: filledIn(values, known, side), share: (i + 1) / order.length };
    postMessage(answer);
    await new Promise((goOn) => setTimeout(goOn));
    if (current !== ask) return;
    toldMs = performance.now();
  }
}

function filledIn(values: Float32Array, known: Uint8Array, side: number): Float32Array {
  return values.map((value, cell) => {
    if (known[cell]) return value;
    const [row, column] = [Math.floor(cell / side), cell % side];
    for (const step of [2, 4, 8]) {
      const coarse = (row - (row % step)) * side + column - (column % step);
      if (known[coarse]) return values[coarse]!;
    }
    return value;
  });
}
