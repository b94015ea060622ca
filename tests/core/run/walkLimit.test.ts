import { expect, test } from 'vitest';
import { begin } from '../../../src/core/run/begin';
import { advance, step } from '../../../src/core/run/step';
import { loadScenario } from '../../../src/core/scenario/load';
import { FLAT, MIDDLE } from '../technique/handmadeRun';
import { plainScenario } from '../world/fixtureScenario';

const limited = plainScenario({ limits: { walkM: 100, paceMPerS: 2 } });

test('the run ends with the last metre that may be walked, and not before', () => {
  let state = step(limited, { ...begin(limited), at: MIDDLE }, { type: 'walk', courseDeg: 90, paceMPerS: 2 });
  while (state.ending === null && state.tick < 2_000) state = advance(limited, FLAT, state);
  expect(state.ending).toBe('walked-out');
  expect(state.walkedM).toBeGreaterThanOrEqual(100);
  expect(state.walkedM).toBeLessThan(100.2);
});

test('who stands keeps all of it, and without a limit nobody is stopped', () => {
  expect(advance(limited, FLAT, { ...begin(limited), at: MIDDLE, walkedM: 99.9 }).ending).toBeNull();
  expect(advance(plainScenario(), FLAT, { ...begin(plainScenario()), at: MIDDLE, walkedM: 39_000 }).ending).toBeNull();
});

test.each([
  [700, null],
  [690, 'a.json: limits.walkM: the tag lies 691 m of walking off, and 690 m may be walked'],
  [50, 'a.json: limits.walkM: too small'],
])('with a tag 700 m off and finds within 10 m, a limit of %i m', (walkM, line) => {
  const tags = [{ ...plainScenario().tags[0]!, at: [600, 1_201] as [number, number] }];
  const text = JSON.stringify(plainScenario({ tags, start: { at: [600, 500], facingDeg: 0 }, limits: { walkM } }));
  if (line === null) expect(loadScenario('a.json', text).limits.walkM).toBe(walkM);
  else expect(() => loadScenario('a.json', text)).toThrow(line);
});
