import { expect, test } from 'vitest';
import { buzzHere } from '../../../src/core/run/buzz';
import { openExercise } from '../../../src/core/run/exercise';
import { bearingDeg } from '../../../src/core/units/frames';
import { plainScenario } from '../world/fixtureScenario';

const scenario = plainScenario({
  ground: {
    sizeM: 1_000,
    relief: { style: 'smooth', strengthM: 1, roughness: 0, baseHeightM: 100 },
    cover: { wood: 0, scrub: 0, wet: 0, rock: 0 },
    water: { lakes: 0, streams: 0 },
    farms: 0,
    fieldWalls: false,
    buildings: [],
    powerLines: [
      {
        voltage: 'high',
        route: [
          [100, 500],
          [900, 500],
        ],
        spanM: 400,
        supportHeightM: 30,
        wireHeightM: 22,
        conductors: 3,
      },
    ],
  },
  tags: [{ ...plainScenario().tags[0]!, at: [500, 800] }],
  start: { at: [500, 300], facingDeg: 0 },
});
const exercise = openExercise(scenario);
const at = { eM: 500, nM: 350 };
const heard = (headingDeg: number) =>
  buzzHere(exercise, 0, { eM: 500, nM: 800 }, at, 1.7)({ antenna: 'yagi3', headingDeg, rollDeg: 90, raised: false });

test('the buzz of a line has a direction: louder toward the sparking support than away from it', () => {
  const sources = exercise.airspace(0, { eM: 500, nM: 800 }).lineNoiseAt(at, 1.7);
  const strongest = sources.reduce((a, b) => (b.powerDbm > a.powerDbm ? b : a));
  expect(heard(strongest.azimuthDeg) - heard(strongest.azimuthDeg + 180)).toBeGreaterThan(3);
  const bearings = scenario.ground.powerLines[0]!.route.map(([eM, nM]) => bearingDeg(at, { eM, nM }));
  expect(Math.min(...[...bearings, 0].map((deg) => Math.abs(((strongest.azimuthDeg - deg + 540) % 360) - 180)))).toBeLessThan(20);
});

test('without a line there is no buzz', () => {
  const quiet = openExercise({ ...scenario, ground: { ...scenario.ground, powerLines: [] } });
  const hold = { antenna: 'yagi3', headingDeg: 0, rollDeg: 90, raised: false } as const;
  expect(buzzHere(quiet, 0, { eM: 500, nM: 800 }, at, 1.7)(hold)).toBe(Number.NEGATIVE_INFINITY);
});

test('20 dB more line noise in the scenario is 20 dB more buzz', () => {
  const louder = openExercise({ ...scenario, radio: { ...scenario.radio, lineNoiseDb: 20 } });
  const hold = { antenna: 'yagi3', headingDeg: 30, rollDeg: 90, raised: false } as const;
  expect(buzzHere(louder, 0, { eM: 500, nM: 800 }, at, 1.7)(hold) - heard(30)).toBeCloseTo(20, 1);
});
