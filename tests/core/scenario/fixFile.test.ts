import { expect, test } from 'vitest';
import { faultLine, InputFaults } from '../../../src/core/scenario/faults';
import { loadFixFile } from '../../../src/core/scenario/fixFile';

function faultsOf(value: unknown): string[] {
  try {
    loadFixFile('walk.json', typeof value === 'string' ? value : JSON.stringify(value));
  } catch (error) {
    if (error instanceof InputFaults) return error.faults.map(faultLine);
    throw error;
  }
  return [];
}

const good = {
  stations: [
    [0, 0],
    [100, 0],
  ],
  bearingsDeg: [45, 315],
};

test('one set comes back as it was, without a method if none was given', () => {
  expect(loadFixFile('walk.json', JSON.stringify(good))).toEqual(good);
  expect(Object.keys(loadFixFile('walk.json', JSON.stringify(good)))).not.toContain('method');
});

test('a list of sets comes back as a list, an empty list as an empty list', () => {
  expect(loadFixFile('walk.json', JSON.stringify([good, { ...good, method: 'huber' }]))).toEqual([good, { ...good, method: 'huber' }]);
  expect(loadFixFile('walk.json', '[]')).toEqual([]);
});

test('sets too small for a fix are no fault of the file', () => {
  expect(faultsOf({ stations: [], bearingsDeg: [] })).toEqual([]);
});

test.each([
  [
    'lists of unequal length',
    { ...good, bearingsDeg: [45] },
    /^walk\.json: bearingsDeg: 1 bearings for 2 stations.*Mend: list one bearing for each station/,
  ],
  ['a bearing of 400', { ...good, bearingsDeg: [45, 400] }, /^walk\.json: bearingsDeg\.1: .*found 400\. Mend: give degrees/],
  ['a bearing in words', { ...good, bearingsDeg: [45, 'NW'] }, /^walk\.json: bearingsDeg\.1: .*found "NW"\. Mend: give degrees/],
  [
    'a station of three numbers',
    {
      ...good,
      stations: [
        [0, 0, 0],
        [1, 1],
      ],
    },
    /^walk\.json: stations\.0.*Mend: give each station as \[east, north\]/,
  ],
  [
    'a coordinate of 1e9',
    {
      ...good,
      stations: [
        [0, 1e9],
        [1, 1],
      ],
    },
    /^walk\.json: stations\.0\.1: .*Mend: give each station/,
  ],
  ['no bearings', { stations: good.stations }, /^walk\.json: bearingsDeg: .*found nothing\. Mend: list one bearing/],
  ['an unknown method', { ...good, method: 'best' }, /^walk\.json: method: .*found "best"\. Mend: write "ml", "huber" or "andrews"/],
  ['an unknown key', { ...good, sigma: 3 }, /^walk\.json: sigma: unknown key/],
  ['a fault in the second set', [good, { ...good, method: 'best' }], /^walk\.json: 1\.method: /],
  ['a number alone', 7, /^walk\.json: whole file: .*Mend: give \{"stations"/],
  ['NaN in the text', '{"stations": [[0, NaN]], "bearingsDeg": [1]}', /^walk\.json: whole file: not JSON.*NaN or Infinity/],
])('%s: the fault names file, path, what was found and the mend', (_, value, line) => {
  expect(faultsOf(value).join('\n')).toMatch(line);
});

test('all faults are given at once', () => {
  expect(faultsOf({ stations: [[0, 'x']], bearingsDeg: [999], method: 'best' })).toHaveLength(3);
});

test('201 stations are one too many', () => {
  const many = Array.from({ length: 201 }, (_, i) => [i, 0]);
  expect(faultsOf({ stations: many, bearingsDeg: many.map(() => 0) }).join()).toMatch(/Mend: list up to 200 stations/);
});
