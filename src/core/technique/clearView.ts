import { answersPart } from './answersPart';
import { type Evidence, type Habit, type HabitResult, notShown, telling, weightedMean } from './habit';
import { withTags } from './legs';
import { type Outlook, outlookOf } from './outlook';
import { placesPart } from './placesPart';
import { readingsOf } from './readings';
import { setbacksOf } from './setbacks';
import { suggestedDistance } from './suggestedDistance';
import { sweepsOf } from './sweeps';
import { pulseIntervalS } from './tunedTag';

const ANSWERS_WEIGHT = 0.3;

/** Reading where the ground sees far. Where the tag is plays no part in it. */
export const clearView: Habit = {
  id: 'clearView',
  name: 'Clear view',
  judge: (evidence) => judgeView(evidence, outlookOf(evidence.exercise.world)),
};

export function judgeView(evidence: Evidence, outlook: Outlook): HabitResult {
  const { states } = evidence.run;
  const readings = withTags(evidence, readingsOf(evidence, sweepsOf(states, pulseIntervalS(evidence))));
  const distance = suggestedDistance(evidence);
  const places = placesPart(readings, outlook, distance);
  const answers = answersPart(states, setbacksOf(evidence, readings), { world: evidence.exercise.world, outlook }, distance);
  const components = { places: places.score, answers: answers.score };
  // The places are the habit; answers alone say too little of it.
  if (places.score === null) {
    return notShown(
      'There were not three reading places, 50 m apart and far from the tag, where a clearer view was to be had.',
      components,
    );
  }
  const score = weightedMean([
    { score: places.score, weight: 1 - ANSWERS_WEIGHT },
    { score: answers.score, weight: ANSWERS_WEIGHT },
  ]);
  return { score, components, moments: telling([...places.moments, ...answers.moments]), whyNotShown: '' };
}
