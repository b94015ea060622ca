import { openExercise } from '../../../src/core/run/exercise';
import { plainScenario } from '../world/fixtureScenario';

/** Gently rolling open ground of 1 km with the tag 430 m from the start: a hunt of some minutes that costs little to compute. */
export const openField = (timeS = 1_500) => {
  const scenario = plainScenario({
    seed: 'open-field',
    ground: {
      sizeM: 1_000,
      relief: { style: 'smooth', strengthM: 25, roughness: 0.3, baseHeightM: 100 },
      cover: { wood: 0.1, scrub: 0, wet: 0, rock: 0 },
      water: { lakes: 0, streams: 0 },
      tracks: 0,
      farms: 0,
      powerLines: [],
      buildings: [],
      fieldWalls: false,
    },
    tags: [{ ...plainScenario().tags[0]!, at: [640, 610], whip: { leanDeg: 20, towardDeg: 0 } }],
    start: { at: [300, 340], facingDeg: 0 },
    limits: { timeS, paceMPerS: 1.5, findWithinM: 12 },
  });
  return openExercise(scenario);
};
