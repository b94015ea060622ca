import { expect, test } from 'vitest';
import { ellipseOf, lenthInformation, squaredTurns, unitInformation } from '../../../src/core/fix/ellipse';
import { estimateFix } from '../../../src/core/fix/estimate';
import { frameOf, toFrame } from '../../../src/core/fix/sightFrame';
import { randomFor } from '../../../src/core/random/draw';
import { bearingDeg, type MapPoint } from '../../../src/core/units/frames';

const tag: MapPoint = { eM: 300, nM: 250 };

test('the ellipse of drawn information matrices is the farthest and the nearest of its own edge, traced by angle', () => {
  const random = randomFor('ellipses', 'test');
  for (let set = 0; set < 100; set++) {
    const [a, b, c] = [1 + 9 * random(), 6 * random() - 3, 1 + 9 * random()];
    const information = { ee: a * a + b * b + 0.1, en: a * b + b * c, nn: b * b + c * c + 0.1 };
    const level = 0.5 + 10 * random();
    const { semiMajorM, semiMinorM, majorAxisBearingDeg } = ellipseOf(information, level)!;
    let [farthest, farthestDeg, nearest] = [0, 0, Infinity];
    for (let deg = 0; deg < 180; deg += 0.01) {
      const [east, north] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
      const radius = Math.sqrt(level / (information.ee * east * east + 2 * information.en * east * north + information.nn * north * north));
      if (radius > farthest) [farthest, farthestDeg] = [radius, deg];
      nearest = Math.min(nearest, radius);
    }
    expect(Math.abs(semiMajorM / farthest - 1), `set ${set}`).toBeLessThan(1e-6);
    expect(Math.abs(semiMinorM / nearest - 1), `set ${set}`).toBeLessThan(1e-6);
    expect(Math.abs(((majorAxisBearingDeg - farthestDeg + 270) % 180) - 90), `set ${set}`).toBeLessThan(0.02);
  }
});

test.each([
  ['no information along one axis', { ee: 1, en: 0, nn: 0 }, 6],
  ['an indefinite matrix', { ee: 1, en: 2, nn: 1 }, 6],
  ['a negative matrix', { ee: -1, en: 0, nn: -1 }, 6],
  ['a level of nothing', { ee: 1, en: 0, nn: 1 }, 0],
  ['an endless level', { ee: 1, en: 0, nn: 1 }, Infinity],
])('%s has no ellipse', (_, information, level) => {
  expect(ellipseOf(information, level)).toBeNull();
});

test('where bearings hit the place exactly, the two kinds of information are one, and no turn is left', () => {
  const stations: MapPoint[] = [
    { eM: -500, nM: 100 },
    { eM: 200, nM: -700 },
    { eM: 900, nM: 800 },
  ];
  const frame = frameOf(stations.map((at) => ({ at, bearingDeg: bearingDeg(at, tag) })));
  const point = toFrame(frame, tag);
  const weights = [1, 0.5, 0.25];
  const plain = unitInformation(frame, weights, point);
  const lenth = lenthInformation(frame, weights, point);
  for (const part of ['ee', 'en', 'nn'] as const) expect(Math.abs(plain[part] - lenth[part])).toBeLessThan(1e-9 * plain.ee);
  expect(squaredTurns(frame, weights, point)).toBeLessThan(1e-24);
  // Worked by hand: a station due south tells nothing of north and weight / distance squared of east.
  const south = frameOf([{ at: { eM: 300, nM: 50 }, bearingDeg: 0 }]);
  expect(unitInformation(south, [0.5], toFrame(south, tag)).ee).toBeCloseTo(0.5 / 200 ** 2, 15);
  expect(unitInformation(south, [0.5], toFrame(south, tag)).nn).toBeCloseTo(0, 15);
});

test('turns of 1, 20 and 175 degrees sum to their squares, by weight', () => {
  const frame = frameOf([1, 20, 175].map((deg, i) => ({ at: { eM: 100 * i, nM: 0 }, bearingDeg: deg })));
  const sum = [0, 1, 2].reduce((total, i) => {
    const north = { x: frame.x[i]!, y: frame.y[i]! + 1 };
    const weights = [0, 0, 0].map((_, j) => (i === j ? 0.5 : 0));
    return total + squaredTurns(frame, weights, north);
  }, 0);
  const rad = Math.PI / 180;
  expect(Math.abs(sum / (0.5 * rad * rad * (1 + 400 + 175 ** 2)) - 1)).toBeLessThan(1e-9);
});

test('a place on top of the first station is refused by its number, as on any other', () => {
  const stations = [
    [0, 0],
    [1000, 0],
    [0, 1000],
    [-800, -900],
  ] as const;
  for (const on of [0, 1, 2, 3]) {
    const [eM, nM] = stations[on]!;
    const bearingsDeg = stations.map(([e, n], i) => (i === on ? 33 : bearingDeg({ eM: e, nM: n }, { eM, nM })));
    const fix = estimateFix({ stations, bearingsDeg });
    expect(fix.ok).toBe(false);
    if (!fix.ok) expect(fix.reason).toContain(`on top of station ${on + 1}`);
  }
});

test('a place half a metre from the first station is on top of it although all bearings meet there exactly', () => {
  const stations = [
    [0, 0],
    [1000, 0],
    [0, 1000],
  ] as const;
  const place = { eM: 0.3, nM: 0.4 };
  const bearingsDeg = stations.map(([eM, nM]) => bearingDeg({ eM, nM }, place));
  const fix = estimateFix({ stations, bearingsDeg });
  expect(fix.ok ? '' : fix.reason).toContain('on top of station 1');
});
