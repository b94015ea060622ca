import { expect, test } from 'vitest';
import { climb } from '../../../src/core/fix/climb';
import { shortfallAt } from '../../../src/core/fix/likelihood';
import { highestPlace, limitAbove, meetings, pattern } from '../../../src/core/fix/peakSearch';
import { frameOf } from '../../../src/core/fix/sightFrame';
import { randomFor } from '../../../src/core/random/draw';
import { bearingDeg, type MapPoint } from '../../../src/core/units/frames';

const at = (eM: number, nM: number): MapPoint => ({ eM, nM });
const towards = (station: MapPoint, point: MapPoint, errorDeg = 0) => ({ at: station, bearingDeg: bearingDeg(station, point) + errorDeg });
const corners = [at(-1000, -1000), at(1000, -1000), at(1000, 1000), at(-1000, 1000)];
const frame = frameOf(corners.map((station, i) => towards(station, at(200, -100), [3, -4, 2, -2][i]!)));
const full = [1, 1, 1, 1];

test('from each of 200 drawn starts inside the square of stations the climb ends on the one peak, within 1e-9', () => {
  const peak = climb(frame, full, { x: 0.1, y: -0.1 });
  expect(peak.end).toBe('peak');
  const random = randomFor('climbs', 'test');
  for (let start = 0; start < 200; start++) {
    const found = climb(frame, full, { x: 1.2 * random() - 0.6, y: 1.2 * random() - 0.6 });
    expect(found.end, `start ${start}`).toBe('peak');
    expect(Math.hypot(found.point.x - peak.point.x, found.point.y - peak.point.y), `start ${start}`).toBeLessThan(1e-9);
    expect(found.shortfall).toBe(shortfallAt(frame, full, found.point));
  }
});

test('a climb never ends lower than it began, wherever it ends', () => {
  const random = randomFor('climbs anywhere', 'test');
  for (let start = 0; start < 200; start++) {
    const from = { x: 20 * random() - 10, y: 20 * random() - 10 };
    expect(climb(frame, full, from).shortfall, `start ${start}`).toBeLessThanOrEqual(shortfallAt(frame, full, from));
  }
});

test('diverging lines send a climb off to infinity; a lone line draws it nowhere but onto itself', () => {
  const apart = frameOf([
    { at: at(-100, 0), bearingDeg: 350 },
    { at: at(0, 0), bearingDeg: 0 },
    { at: at(100, 0), bearingDeg: 10 },
  ]);
  const off = climb(apart, [1, 1, 1], { x: 0.3, y: 5 });
  expect(off.end).toBe('far');
  expect(Math.hypot(off.point.x, off.point.y)).toBeGreaterThan(1e4);
  expect(climb(apart, [0, 1, 0], { x: 0.4, y: 5 }).shortfall).toBeLessThan(1e-20);
});

test('a start within 1e-7 of a station that counts has ended there; a station of no weight holds nothing', () => {
  const onto = { x: frame.x[0]! + 1e-8, y: frame.y[0]! };
  expect(climb(frame, full, onto)).toMatchObject({ end: 'station', point: onto });
  expect(climb(frame, [0, 1, 1, 1], onto).end).not.toBe('station');
});

test('the limit far away wins over no peak of a square of stations, and a station over a peak worse than it', () => {
  const found = highestPlace(frame, full);
  expect(found.kind).toBe('peak');
  expect(limitAbove(frame, full, found.shortfall)).toBeUndefined();
  // A peak of the whole weight of all four is worse than any limit; the best limit is told.
  expect(limitAbove(frame, full, 8)).toBeDefined();
  // All but the first look at the first: its place is the best by far, since its own word is free there.
  const onFirst = frameOf([{ at: corners[0]!, bearingDeg: 225 }, ...corners.slice(1).map((station) => towards(station, corners[0]!))]);
  expect(highestPlace(onFirst, full)).toMatchObject({ kind: 'station', station: 0 });
  const alike = frameOf(corners.map((station) => ({ at: station, bearingDeg: 70 })));
  expect(highestPlace(alike, full)).toMatchObject({ kind: 'far' });
});

test('meetings are those ahead of both, and the pattern reaches from a hundredth to a hundred spreads along every line', () => {
  const exact = frameOf(corners.map((station) => towards(station, at(200, -100))));
  const met = meetings(exact);
  expect(met).toHaveLength(6);
  for (const { x, y } of met) expect(Math.hypot(x * exact.unitM - 200, y * exact.unitM + 100)).toBeLessThan(1e-6);
  // One that looks away meets the other three behind itself.
  expect(meetings(frameOf(corners.map((station, i) => towards(station, at(200, -100), i === 2 ? 180 : 0))))).toHaveLength(3);
  const points = pattern(frame);
  for (const reach of [0.01, 1, 100]) {
    for (let i = 0; i < 4; i++) {
      const [x, y] = [frame.x[i]! + reach * frame.sine[i]!, frame.y[i]! + reach * frame.cosine[i]!];
      expect(points.some((point) => Math.hypot(point.x - x, point.y - y) < 1e-9 * reach)).toBe(true);
    }
    for (const [x, y] of [
      [reach, 0],
      [0, reach],
      [-reach, 0],
      [0, -reach],
    ] as const)
      expect(points.some((point) => Math.hypot(point.x - x, point.y - y) < 1e-9 * reach)).toBe(true);
  }
});
