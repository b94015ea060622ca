import { expect, test } from 'vitest';
import { neededApartM, spreadsPart } from '../../../src/core/technique/spreadsPart';
import { walkEvidence } from '../../../src/core/technique/walkEvidence';
import { plainScenario } from '../world/fixtureScenario';
import { handmadeOutlook, handmadeRun, handmadeWorld, out } from './handmadeRun';

/** Reads at places north of the middle, this many metres out. At 15 dB of least gain 40 m apart are asked for. */
function spreads(placesM: readonly number[], setting: Parameters<typeof handmadeRun>[1] = {}) {
  const run = handmadeRun((hands) => {
    for (const m of placesM) {
      hands.walkTo(out(0, m));
      hands.mark(0);
      hands.stand(5);
    }
  }, setting);
  return spreadsPart(walkEvidence(run, handmadeOutlook()));
}

test.each([
  [200, 15],
  [300, 15],
  [600, 30],
  [3_000, 150],
  [5_000, 150],
  [null, 150],
])('where least gain suggests %s m, readings are asked for %i m apart', (suggestedM, needed) => {
  expect(neededApartM(suggestedM)).toBeCloseTo(needed, 9);
});

test.each([
  [[0, 40, 80], 100],
  [[0, 30, 60], 50],
  [[0, 20, 40], 0],
  [[0, 39, 79], 97.5],
])('800 m from the tag readings at %j m out give %f', (placesM, score) => {
  expect(spreads(placesM).score).toBeCloseTo(score, 6);
});

test('a single pair shows nothing', () => {
  expect(spreads([0, 40]).score).toBeNull();
});

test('a repeat within 10 m replaces the earlier reading, also after others; 11 m does not', () => {
  expect(spreads([0, 45, 100, 9.5]).score).toBe(100);
  expect(spreads([0, 45, 100, 11]).score).toBeLessThan(70);
});

test('readings are held against the last five only', () => {
  const far = [0, 100, 200, 300, 400, 500];
  expect(spreads([...far, 15]).score).toBe(100);
  expect(spreads([...far.slice(1), 115]).score).toBeLessThan(90);
});

test('a pair across wires is exempt', () => {
  const world = handmadeWorld({
    wires: [
      [
        { eM: 3_000, nM: 4_090 },
        { eM: 5_000, nM: 4_090 },
      ],
    ],
  });
  expect(spreads([0, 80, 95, 180], { world }).score).toBe(100);
  expect(spreads([0, 80, 95, 180]).score).toBeLessThan(80);
});

test('readings of two tags are not held against each other', () => {
  const [tag] = plainScenario().tags;
  const scenario = plainScenario({ tags: [tag!, { ...tag!, frequencyMHz: 151 }] });
  const run = handmadeRun(
    (hands) => {
      for (const m of [0, 50, 100]) {
        hands.walkTo(out(0, m));
        hands.tune(150.1);
        hands.mark(0);
        hands.walkTo(out(0, m + 12));
        hands.tune(151);
        hands.mark(90);
        hands.stand(5);
      }
    },
    { scenario },
  );
  expect(spreadsPart(walkEvidence(run, handmadeOutlook())).score).toBe(100);
});

test('a pair too close is a bad moment that says how far to walk', () => {
  const bad = spreads([0, 20, 90]).moments.find(({ good }) => !good)!;
  expect(bad.what).toContain('20 m');
  expect(bad.next).toContain('at least 40 m');
});
