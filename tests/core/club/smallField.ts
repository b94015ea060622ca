import { plainScenario } from '../world/fixtureScenario';

/** Open rolling ground of 1 km in coarse cells and a few minutes' time: a walk that costs little to compute. */
export const smallField = (seed: string, tagAt: [number, number], timeS: number) =>
  plainScenario({
    seed,
    title: `Field ${seed}`,
    ground: {
      sizeM: 1_000,
      cellM: 20,
      relief: { style: 'smooth', strengthM: 25, roughness: 0.3, baseHeightM: 100 },
      cover: { wood: 0.1, scrub: 0, wet: 0, rock: 0 },
      water: { lakes: 0, streams: 0 },
      tracks: 0,
      farms: 0,
      powerLines: [],
      buildings: [],
      fieldWalls: false,
    },
    tags: [{ ...plainScenario().tags[0]!, at: tagAt, whip: { leanDeg: 20, towardDeg: 0 } }],
    start: { at: [300, 340], facingDeg: 0 },
    limits: { timeS, paceMPerS: 1.6, findWithinM: 12 },
    kit: { startGainDb: 60 },
  });
