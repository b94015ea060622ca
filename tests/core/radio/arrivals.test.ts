import { describe, expect, test } from 'vitest';
import { type Airspace, makeAirspace, wavePowerDbm } from '../../../src/core/radio/arrivals';
import { directWave } from '../../../src/core/radio/directWave';
import { makeFieldCache } from '../../../src/core/radio/fieldCache';
import { computeRadial } from '../../../src/core/radio/radial';
import { fieldSquared, wholeLossDb } from '../../../src/core/radio/waveVector';
import { randomFor } from '../../../src/core/random/draw';
import type { Scenario } from '../../../src/core/scenario/schema';
import type { MapPoint } from '../../../src/core/units/frames';
import { generateWorld } from '../../../src/core/world/generate';
import type { World } from '../../../src/core/world/world';
import { plainScenario } from '../world/fixtureScenario';
import { shapedWorld } from '../world/shapedWorld';

const small = plainScenario({ ground: { sizeM: 1_500, cellM: 10 } });
const tagged = (overrides: Partial<Scenario['tags'][number]>): Scenario => ({ ...small, tags: [{ ...small.tags[0]!, ...overrides }] });
const bumpy = (eM: number, nM: number) => 200 + 25 * Math.sin(eM / 170) * Math.cos(nM / 140) + 8 * Math.sin(nM / 60);
const MIDDLE: MapPoint = { eM: 750, nM: 750 };
const airspace = (world: World, scenario: Scenario = tagged({}), tagAt = MIDDLE): Airspace =>
  makeAirspace({ scenario, world, tagIndex: 0, tagAt });
const hills = shapedWorld(bumpy, 1_500);

describe('every wave at a point', () => {
  test('the answer at a point does not depend on what was asked before', () => {
    const [a, b] = [airspace(hills), airspace(hills)];
    const points = [
      { eM: 300, nM: 500 },
      { eM: 900, nM: 1_200 },
      { eM: 1_300, nM: 310 },
    ];
    const forward = points.map((p) => a.arrivalsAt(p, 1.7));
    const backward = [...points].reverse().map((p) => b.arrivalsAt(p, 1.7));
    expect(forward).toEqual(backward.reverse());
  });

  test('a radial computed elsewhere and put in gives the same answer as one computed here', () => {
    const [a, b] = [airspace(hills), airspace(hills)];
    const at = { eM: 1_090, nM: 430 };
    const requests = a.field.neededRadials([at]);
    expect(requests.length).toBe(2);
    for (const request of requests) a.field.put(computeRadial(structuredClone(request)));
    expect(a.field.neededRadials([at])).toEqual([]);
    expect(a.field.excessAt(at, 1.7)).toEqual(b.field.excessAt(at, 1.7));
  });

  test('no steps: the largest change of the direct wave over 0.25 m shrinks at least 1.7 times over 0.125 m', () => {
    const world = generateWorld(small);
    const tagAt = { eM: 700, nM: 640 };
    const tag = small.tags[0]!;
    const field = makeFieldCache({ scenario: small, world, tagAt, tagHeightM: tag.heightM, frequencyMHz: tag.frequencyMHz });
    const site = { scenario: small, world, tagIndex: 0, tagAt, field };
    const directDb = (at: MapPoint) => 10 * Math.log10(fieldSquared(directWave(site, at, 1.7).wave));
    const change = (apartM: number): number => {
      let worst = 0;
      for (let i = 0; i < 400; i++) {
        const turn = 0.4 + i * 0.0003;
        const at = (m: number) => ({ eM: 700 + m * Math.cos(turn), nM: 640 + m * Math.sin(turn) });
        const far = 5 + i * 1.6;
        worst = Math.max(worst, Math.abs(directDb(at(far)) - directDb(at(far + apartM))));
      }
      return worst;
    };
    expect(change(0.25) / change(0.125)).toBeGreaterThan(1.7);
  });

  test('turning a flat scene by 90 degrees turns the direct wave exactly', () => {
    const flat = shapedWorld(() => 100, 1_500);
    const before = airspace(flat, tagged({ whip: { leanDeg: 40, towardDeg: 20 } })).arrivalsAt({ eM: 750, nM: 1_050 }, 1.7).waves[0]!;
    const after = airspace(flat, tagged({ whip: { leanDeg: 40, towardDeg: 110 } })).arrivalsAt({ eM: 1_050, nM: 750 }, 1.7).waves[0]!;
    expect(after.azimuthDeg - before.azimuthDeg).toBeCloseTo(90, 9);
    expect(after.eastRe).toBeCloseTo(before.northRe, 12);
    expect(after.northRe).toBeCloseTo(-before.eastRe, 12);
    expect(after.upIm).toBeCloseTo(before.upIm, 12);
  });

  test('the budget of every wave adds up to its whole loss within 0.001 dB', () => {
    const space = makeAirspace({ scenario: small, world: generateWorld(small), tagIndex: 0, tagAt: { eM: 700, nM: 640 } });
    for (const at of [
      { eM: 200, nM: 730 },
      { eM: 900, nM: 1_300 },
    ])
      for (const wave of space.arrivalsAt(at, 1.7).waves)
        expect(Math.abs(wholeLossDb(wave.lossDb) + wavePowerDbm(wave, 0, small.tags[0]!.frequencyMHz))).toBeLessThan(0.001);
  });

  test.each([...Array(6).keys()])('seed %i: no NaN and no Infinity for any place, height, frequency and whip', (seed) => {
    const random = randomFor(`finite-${seed}`, 'test');
    const scenario = {
      ...tagged({
        frequencyMHz: 30 + 470 * random() * random(),
        heightM: 0.02 + 3 * random(),
        whip: { leanDeg: 90 * random(), towardDeg: 359 * random() },
      }),
      seed: `finite-${seed}`,
    };
    const world = seed % 3 === 0 ? generateWorld(scenario) : hills;
    const tagAt = { eM: 20 + 1_460 * random(), nM: 20 + 1_460 * random() };
    const space = makeAirspace({ scenario, world, tagIndex: 0, tagAt });
    for (const at of [
      tagAt,
      { eM: tagAt.eM + 0.2, nM: tagAt.nM },
      { eM: 0, nM: 0 },
      { eM: 1_500, nM: 1_500 },
      { eM: 1_500 * random(), nM: 1_500 * random() },
    ]) {
      const { waves } = space.arrivalsAt(at, 0.3 + 3 * random());
      for (const wave of waves) {
        const { kind: _kind, lossDb, ...numbers } = wave;
        for (const value of [...Object.values(numbers), ...Object.values(lossDb)]) expect(Number.isFinite(value)).toBe(true);
      }
    }
  });
});
