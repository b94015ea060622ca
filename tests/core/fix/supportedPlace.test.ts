import { expect, test } from 'vitest';
import { agree, mostAgreeing } from '../../../src/core/fix/agreement';
import type { BearingLine } from '../../../src/core/fix/bearingLine';
import { bestFar, robustLogLikelihood, supportedPlace } from '../../../src/core/fix/supportedPlace';
import { randomFor } from '../../../src/core/random/draw';
import { bearingDeg, type MapPoint, stepAlong } from '../../../src/core/units/frames';

const at = (eM: number, nM: number): MapPoint => ({ eM, nM });
const reading = (eM: number, nM: number, takenDeg: number): BearingLine => ({ at: at(eM, nM), bearingDeg: takenDeg });
const tag = at(600, 400);

/** Andrews' loss with the chord 2 sin(r/2) for the turn r, in spreads; tuning constant 1.5 (Lenth 1981), written down afresh. */
function loss(turnDeg: number, sdDeg: number): number {
  const spreads = (2 * Math.abs(Math.sin((turnDeg * Math.PI) / 360)) * 180) / Math.PI / sdDeg;
  return spreads < 1.5 * Math.PI ? 2.25 * (1 - Math.cos(spreads / 1.5)) : 4.5;
}

const lossAt = (lines: readonly BearingLine[], point: MapPoint, sdDeg: number): number =>
  lines.reduce((sum, line) => sum + loss(line.bearingDeg - bearingDeg(line.at, point), sdDeg), 0);

/** Three to five readings of the tag with up to 8 degrees of error, the first of them anything. */
function drawn(set: number): BearingLine[] {
  const random = randomFor('supported place closely', 'test', set);
  return Array.from({ length: 3 + Math.floor(3 * random()) }, (_, i) => {
    const station = at(1500 * random(), 1500 * random());
    return { at: station, bearingDeg: i === 0 ? 360 * random() : bearingDeg(station, tag) + 16 * random() - 8 };
  });
}

test('the robust likelihood of a place is minus the losses written down afresh, within 1e-9', () => {
  for (let set = 0; set < 20; set++) {
    const lines = drawn(set);
    const value = robustLogLikelihood(lines, 6.4);
    for (const point of [at(10, 20), at(700, 500), at(-900, 1400)])
      expect(Math.abs(value(point) + lossAt(lines, point, 6.4)), `set ${set}`).toBeLessThan(1e-9);
  }
});

test('a step of 0.2 m in any of 16 directions leaves the supported place for a worse one, in 60 drawn sets', () => {
  let places = 0;
  for (let set = 0; set < 60; set++) {
    const lines = drawn(set);
    const best = supportedPlace(lines, 6.4);
    if (best.kind === 'far' || lines.some((line) => Math.hypot(line.at.eM - best.point.eM, line.at.nM - best.point.nM) < 5)) continue;
    places += 1;
    expect(Math.abs(best.logLikelihood + lossAt(lines, best.point, 6.4))).toBeLessThan(1e-9);
    for (let turn = 0; turn < 16; turn++) {
      const beside = stepAlong(best.point, 22.5 * turn, 0.2);
      expect(lossAt(lines, beside, 6.4), `set ${set}, towards ${22.5 * turn}`).toBeGreaterThan(-best.logLikelihood);
    }
  }
  expect(places).toBeGreaterThan(30);
});

test('the best direction far away is that of a search in steps of 0.01 degrees, within 0.02, in 40 drawn sets', () => {
  for (let set = 0; set < 40; set++) {
    const random = randomFor('best far', 'test', set);
    const lines = Array.from({ length: 1 + Math.floor(5 * random()) }, () =>
      reading(1000 * random(), 1000 * random(), 340 + 50 * random() - 25),
    );
    const lossOf = (deg: number) => lines.reduce((sum, line) => sum + loss(line.bearingDeg - deg, 6.4), 0);
    let least = Infinity;
    let leastDeg = 0;
    for (let deg = 0; deg < 360; deg += 0.01) {
      const here = lossOf(deg);
      if (here < least) [least, leastDeg] = [here, deg];
    }
    const found = bestFar(lines, 6.4);
    expect(Math.abs(found.loss - lossOf(found.bearingDeg)), `set ${set}`).toBeLessThan(1e-9);
    expect(found.loss, `set ${set}`).toBeLessThan(least + 1e-5);
    expect(Math.abs(((found.bearingDeg - leastDeg + 540) % 360) - 180), `set ${set}`).toBeLessThan(0.02);
    expect(found.bearingDeg).toBeGreaterThanOrEqual(0);
    expect(found.bearingDeg).toBeLessThan(360);
  }
});

test('parallel readings have their place far away along them, with nothing lost', () => {
  const far = supportedPlace([reading(0, 0, 40), reading(500, 0, 40), reading(900, 300, 40)], 6.4);
  expect(far).toMatchObject({ kind: 'far' });
  if (far.kind === 'far') expect(Math.abs(far.bearingDeg - 40)).toBeLessThan(1e-9);
  expect(Math.abs(far.logLikelihood)).toBeLessThan(1e-12);
});

// Two readings from one place leave the ground that both allow: 20 and 40 degrees leave 25 to 35.
test.each([
  [24, false],
  [26, true],
  [34, true],
  [36, false],
])('readings along 20 and 40 degrees from one place leave 25 to 35: a spot at %d degrees is in it: %s', (towardsDeg, inside) => {
  const spot = stepAlong(at(0, 0), towardsDeg, 1000);
  // The third place is so near the spot that its reading, 15 degrees either way, holds nothing else of the wedge's ground.
  const close = stepAlong(spot, towardsDeg + 90, 1);
  const beyond = { at: close, bearingDeg: bearingDeg(close, spot) };
  const closeToo = stepAlong(spot, towardsDeg - 90, 1);
  const facing = { at: closeToo, bearingDeg: bearingDeg(closeToo, spot) };
  expect(agree([reading(0, 0, 20), reading(0, 0, 40), beyond, facing])).toBe(inside);
  expect(agree([reading(0, 0, 40), reading(0, 0, 20), beyond, facing])).toBe(inside);
});

test('three readings from one place: the third is held against what the first two left', () => {
  expect(agree([reading(5, 5, 0), reading(5, 5, 20), reading(5, 5, 29.9)])).toBe(true);
  expect(agree([reading(5, 5, 0), reading(5, 5, 20), reading(5, 5, 30.1)])).toBe(false);
  expect(agree([reading(5, 5, 0), reading(5, 5, 20), reading(5, 5, -9.9)])).toBe(true);
  expect(agree([reading(5, 5, 0), reading(5, 5, 20), reading(5, 5, -10.1)])).toBe(false);
});

test('readings that agree only at the place of one of them agree: its own line is free there', () => {
  // From the sides both look at the middle station, which itself looks away to the north.
  expect(agree([reading(0, 0, 0), reading(-100, 0, 90), reading(100, 0, 270)])).toBe(true);
  expect(agree([reading(0, 0, 0), reading(-100, 0, 90), reading(100, 0, 270), reading(0, 200, 90)])).toBe(false);
});

test('of no readings none agree, of one one, of two that look apart one', () => {
  expect(mostAgreeing([])).toBe(0);
  expect(mostAgreeing([reading(0, 0, 10)])).toBe(1);
  expect(mostAgreeing([reading(0, 0, 270), reading(100, 0, 90)])).toBe(1);
});
