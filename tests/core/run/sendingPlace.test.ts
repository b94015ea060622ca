import { describe, expect, test } from 'vitest';
import { sendingPlace, sendingPlaces } from '../../../src/core/run/sendingPlace';
import { tagAt } from '../../../src/core/run/tagMotion';
import type { Scenario, Tag } from '../../../src/core/scenario/schema';
import { plainScenario } from '../world/fixtureScenario';

const moving = (movement: Tag['movement']): Scenario => {
  const plain = plainScenario();
  return { ...plain, tags: [{ ...plain.tags[0]!, at: [400, 400], movement }] };
};
const points: [number, number][] = [
  [700, 520],
  [690, 900],
];
const path = moving({ kind: 'path', points, speedMPerS: 1.3, pauseS: 5 });

describe('from where a tag sends', () => {
  test('a tag that stays sends from where it is, a moving one from the nearest lattice place', () => {
    expect(sendingPlace(moving({ kind: 'stays' }), 0, { eM: 403, nM: 407 })).toEqual({ eM: 403, nM: 407 });
    expect(sendingPlace(path, 0, { eM: 403, nM: 407 })).toEqual({ eM: 400, nM: 410 });
  });

  test('no place is further than 7.1 m from where the tag is, and none lies on the edge of the map', () => {
    for (let s = 0; s < 600; s += 0.7) {
      const [at, place] = [tagAt(path, 0, s), sendingPlace(path, 0, tagAt(path, 0, s))];
      expect(Math.hypot(at.eM - place.eM, at.nM - place.nM)).toBeLessThan(7.1);
    }
    expect(sendingPlace(path, 0, { eM: 0, nM: path.ground.sizeM })).toEqual({ eM: 1, nM: path.ground.sizeM - 1 });
  });

  test.each([
    ['on a path', path],
    ['that wanders', moving({ kind: 'wanders', withinM: 200, speedMPerS: 2, restS: 3 })],
  ] as const)(
    'places asked for 14 s ahead, tick after tick, hold every one from which a tag %s then sends for a second or more',
    (_, scenario) => {
      const known = new Set<string>();
      const key = (place: { eM: number; nM: number }) => `${place.eM}/${place.nM}`;
      let toS = 0;
      for (let nowS = 0; nowS < 300; nowS += 0.05) {
        for (const place of sendingPlaces(scenario, 0, toS, nowS + 14)) known.add(key(place));
        toS = nowS + 14;
      }
      let missed = 0;
      let sent = 0;
      for (let s = 0; s < 300; s += 0.5) {
        const here = key(sendingPlace(scenario, 0, tagAt(scenario, 0, s)));
        if (here !== key(sendingPlace(scenario, 0, tagAt(scenario, 0, s + 1)))) continue;
        sent++;
        if (!known.has(here)) missed++;
      }
      expect(sent).toBeGreaterThan(200);
      expect(missed).toBe(0);
    },
  );

  test('a tag that stays has one place at all times', () => {
    expect(sendingPlaces(moving({ kind: 'stays' }), 0, 0, 3_600)).toEqual([{ eM: 400, nM: 400 }]);
  });
});
