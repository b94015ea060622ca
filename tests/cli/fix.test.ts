import { expect, test } from 'vitest';
import { fixCommand } from '../../src/cli/fix';
import { InputFaults } from '../../src/core/scenario/faults';

const pair = {
  stations: [
    [0, 0],
    [100, 0],
  ],
  bearingsDeg: [45, 315],
};
const parallel = {
  stations: [
    [0, 0],
    [100, 0],
  ],
  bearingsDeg: [10, 10],
};

test('one set in, one fix out, with every key of the contract', () => {
  const fix = fixCommand(JSON.stringify(pair), 'pair.json') as Record<string, unknown>;
  expect(fix).toMatchObject({ ok: true, kappa: null, ellipse95: null, ellipse95Chi2: null });
  expect(fix['x']).toBeCloseTo(50, 9);
  expect(fix['residualsDeg']).toHaveLength(2);
  expect(fix).toHaveProperty('crossingAngleDeg');
  expect(fix).toHaveProperty('warnings');
});

test('a list in, a list out, refusals in their place', () => {
  expect(fixCommand(JSON.stringify([parallel, pair]), 'two.json')).toMatchObject([{ ok: false }, { ok: true }]);
  expect(fixCommand('[]', 'none.json')).toEqual([]);
});

test('the answer survives JSON unchanged: nothing in it is undefined, NaN or infinite', () => {
  const answer = fixCommand(JSON.stringify([parallel, pair]), 'two.json');
  expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
});

test('a wrong file throws its faults', () => {
  expect(() => fixCommand('{"stations": 3}', 'bad.json')).toThrow(InputFaults);
});
