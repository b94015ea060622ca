import { readFileSync } from 'node:fs';
import { SURVEY_KINDS, type SurveyKind, surveyAt, surveyPlace } from '../../src/core/debrief/survey';
import { openExercise } from '../../src/core/run/exercise';
import { loadScenario } from '../../src/core/scenario/load';
import type { Figure } from './figure';

/** Points along a side, as in the pictures of the command line. */
const POINTS = 72;
const EXERCISE = 'two-ridges';

/** Seconds for one picture of a map, its tag's waves not yet worked out. */
function pictureS(what: SurveyKind): number {
  const scenario = loadScenario(EXERCISE, readFileSync(`scenarios/${EXERCISE}.json`, 'utf8'));
  const exercise = openExercise(scenario);
  const { startGainDb: gainDb, startAttenuatorDb: attenuatorDb } = scenario.kit;
  const setting = { tag: 0, timeS: 0, gainDb, attenuatorDb };
  const from = performance.now();
  for (let cell = 0; cell < POINTS * POINTS; cell++) surveyAt(exercise, what, surveyPlace(POINTS, scenario.ground.sizeM, cell), setting);
  return (performance.now() - from) / 1000;
}

/** One core, whole pictures of 72 x 72 points; the goal is our own. */
export const figures = (): Figure[] =>
  SURVEY_KINDS.map((what) => ({ name: `survey picture, ${EXERCISE}, cold: ${what}`, unit: 's', value: pictureS(what), goal: 30 }));
