import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mostAgreeing } from '../../../src/core/fix/agreement';
import type { BearingLine } from '../../../src/core/fix/bearingLine';
import { guessFromBearings } from '../../../src/core/fix/guess';
import { agree, bestSupportedDirection, contradicts } from '../../../src/core/fix/support';
import { robustLogLikelihood, supportedPlace } from '../../../src/core/fix/supportedPlace';
import { randomFor } from '../../../src/core/random/draw';
import { turnDeg } from '../../../src/core/units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../../../src/core/units/frames';

const tag: MapPoint = { eM: 600, nM: 400 };
const at = (eM: number, nM: number): MapPoint => ({ eM, nM });
const reading = (eM: number, nM: number, takenDeg: number): BearingLine => ({ at: at(eM, nM), bearingDeg: takenDeg });
/** A reading of the tag with an error. */
const sight = (eM: number, nM: number, errorDeg: number): BearingLine => reading(eM, nM, bearingDeg(at(eM, nM), tag) + errorDeg);

test('readings 14 degrees off to either side of the tag agree; one 31 degrees off a pair of exact ones does not', () => {
  expect(agree([sight(0, 0, 14), sight(300, 0, -14), sight(0, 500, 14)])).toBe(true);
  expect(agree([sight(0, 0, 0), sight(1200, 0, 0), sight(600, 1000, 75)])).toBe(false);
});

test('two readings that spread apart agree up to 30 degrees, far away, and not beyond', () => {
  expect(agree([reading(0, 0, 350.1), reading(100, 0, 19.9)])).toBe(true);
  expect(agree([reading(0, 0, 344.5), reading(100, 0, 15.5)])).toBe(false);
});

test('two readings from one place agree up to 30 degrees apart, three only if the outer two do', () => {
  expect(agree([reading(0, 0, 350), reading(0, 0, 19.9)])).toBe(true);
  expect(agree([reading(0, 0, 350), reading(0, 0, 20.1)])).toBe(false);
  expect(agree([reading(0, 0, 0), reading(0, 0, 20), reading(0, 0, 31)])).toBe(false);
});

test('no reading and a single reading agree with themselves', () => {
  expect(agree([])).toBe(true);
  expect(agree([reading(0, 0, 77)])).toBe(true);
});

test('in 150 drawn sets agreement is what a search of the plane finds', () => {
  let yes = 0;
  for (let set = 0; set < 150; set++) {
    const random = randomFor('agreement', 'test', set);
    const lines = Array.from({ length: 2 + Math.floor(3 * random()) }, () => reading(1000 * random(), 1000 * random(), 360 * random()));
    const fits = (withinDeg: number): boolean => {
      const first = lines[0]!;
      for (let ring = 0; ring < 150; ring++) {
        for (let off = -withinDeg; off <= withinDeg; off += 0.5) {
          const point = stepAlong(first.at, first.bearingDeg + off, 1.12 ** ring);
          if (lines.every((line) => Math.abs(turnDeg(line.bearingDeg, bearingDeg(line.at, point))) <= withinDeg + 1e-9)) return true;
        }
      }
      return false;
    };
    const said = agree(lines);
    if (said) yes += 1;
    // The search is coarse: it must find a point in slightly wider wedges where agreement is claimed, and none where it is denied.
    expect(fits(said ? 18 : 15), `set ${set}`).toBe(said);
  }
  expect(yes).toBeGreaterThan(15);
  expect(yes).toBeLessThan(135);
});

test('of five readings three of which point to the tag and two elsewhere, three agree at most', () => {
  expect(mostAgreeing([sight(0, 0, 2), sight(0, 300, -60), sight(900, 0, -3), sight(800, 900, 150), sight(200, 900, 4)])).toBe(3);
});

test('the best-supported direction points to the tag within 3 degrees although one of five readings is a bounce 70 degrees off', () => {
  const from = at(100, 700);
  const best = bestSupportedDirection(
    [sight(0, 0, 2), sight(300, -100, -2), sight(900, 0, 70), sight(0, 500, 1), sight(100, 700, -2)],
    from,
  )!;
  expect(Math.abs(turnDeg(best.bearingDeg, bearingDeg(from, tag)))).toBeLessThan(3);
  expect(distanceM(best.point!, tag)).toBeLessThan(40);
  expect(best.agreeing).toBe(4);
});

test('only the last five readings count', () => {
  const old = [reading(0, 0, 180), reading(100, 0, 180), reading(200, 50, 180), reading(300, 0, 180)];
  const last = [sight(0, 0, 2), sight(300, -100, -2), sight(900, 0, 1), sight(0, 500, 1), sight(100, 700, -2)];
  const from = at(100, 700);
  expect(bestSupportedDirection([...old, ...last], from)).toEqual(bestSupportedDirection(last, from));
});

test('fewer than two agreeing readings: along the last bearing, without a point', () => {
  expect(bestSupportedDirection([reading(0, 0, 123)], at(5, 5))).toEqual({ bearingDeg: 123, agreeing: 1, point: null });
  const apart = [reading(0, 0, 270), reading(100, 0, 90)];
  expect(bestSupportedDirection(apart, at(100, 0))).toEqual({ bearingDeg: 90, agreeing: 1, point: null });
});

test('no readings, no direction', () => {
  expect(bestSupportedDirection([], at(0, 0))).toBe(null);
});

test('two readings 20 degrees apart that never meet: half way between them, far away', () => {
  const best = bestSupportedDirection([reading(0, 0, 350), reading(200, 0, 10)], at(200, 0))!;
  expect(best.point).toBe(null);
  expect(best.agreeing).toBe(2);
  expect(Math.abs(turnDeg(best.bearingDeg, 0))).toBeLessThan(0.05);
});

test('readings in line with the walk: still forward within 5 degrees after walking on past the last one, and a further reading in line is no contradiction', () => {
  const inLine = [reading(0, 0, 2), reading(0, 100, -3), reading(0, 200, 1)];
  for (const nM of [200, 230, 300]) {
    const best = bestSupportedDirection(inLine, at(0, nM))!;
    expect(Math.abs(turnDeg(best.bearingDeg, 0))).toBeLessThan(5);
    expect(best).toMatchObject({ agreeing: 3, point: null });
  }
  expect(contradicts(reading(0, 300, 1), inLine)).toBe(false);
  expect(contradicts(reading(0, 300, 40), inLine)).toBe(true);
});

test('one who has gone past the tag is sent back: readings in line that face one another have it between them', () => {
  const before = [sight(100, 380, 2), sight(250, 395, -3), sight(400, 390, 4)];
  const past = sight(820, 405, 5);
  const { bearingDeg: backDeg } = bestSupportedDirection([...before, past], past.at)!;
  expect(Math.abs(turnDeg(backDeg, bearingDeg(past.at, tag)))).toBeLessThan(15);
});

test('on the best point itself the last bearing is the direction', () => {
  const best = bestSupportedDirection([sight(0, 0, 0), sight(1000, 0, 0), reading(600, 400, 33)], tag)!;
  expect(best.bearingDeg).toBe(33);
});

test('moved and turned readings move and turn the best-supported direction', () => {
  fc.assert(
    fc.property(
      fc.nat(300),
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      (seed, byDeg, eastM) => {
        const random = randomFor('support', 'test', seed);
        const lines = Array.from({ length: 3 + Math.floor(3 * random()) }, () =>
          sight(1500 * random() - 750, 1500 * random() - 750, 16 * random() - 8),
        );
        const [s, c] = [Math.sin((byDeg * Math.PI) / 180), Math.cos((byDeg * Math.PI) / 180)];
        const move = ({ eM, nM }: MapPoint): MapPoint => at(eM * c + nM * s + eastM, nM * c - eM * s);
        const from = lines.at(-1)!.at;
        const here = bestSupportedDirection(lines, from)!;
        const moved = bestSupportedDirection(
          lines.map((line) => ({ at: move(line.at), bearingDeg: line.bearingDeg + byDeg })),
          move(from),
        )!;
        expect(moved.agreeing).toBe(here.agreeing);
        expect(moved.point === null).toBe(here.point === null);
        if (here.point && moved.point) expect(distanceM(move(here.point), moved.point)).toBeLessThan(0.01);
      },
    ),
    { seed: 21, numRuns: 60 },
  );
});

test('a reading contradicts three that meet if it misses their point by 31 degrees, not by 29', () => {
  const others = [sight(0, 0, 0), sight(1000, 0, 0), sight(600, 1200, 0)];
  expect(contradicts(sight(0, 700, 31), others)).toBe(true);
  expect(contradicts(sight(0, 700, -31), others)).toBe(true);
  expect(contradicts(sight(0, 700, 29), others)).toBe(false);
});

test('a reading contradicts a single other if it misses every point of its line by more than 30 degrees', () => {
  const north = reading(0, 0, 0);
  expect(contradicts(reading(500, 0, 270), [north])).toBe(false); // looks at its start
  expect(contradicts(reading(500, 0, 330), [north])).toBe(false); // crosses it
  expect(contradicts(reading(500, 0, 29), [north])).toBe(false); // 29 degrees off its far end
  expect(contradicts(reading(500, 0, 31), [north])).toBe(true);
  expect(contradicts(reading(500, 0, 239), [north])).toBe(true); // 31 degrees off its start
  expect(contradicts(reading(0, 0, 40), [north])).toBe(true);
});

test('with no others nothing is contradicted', () => {
  expect(contradicts(reading(0, 0, 0), [])).toBe(false);
});

test('no point of a 50 m grid is better supported than the supported place, in 40 drawn sets with a bounce', () => {
  for (let seed = 0; seed < 40; seed++) {
    const random = randomFor('supported place', 'test', seed);
    const lines = Array.from({ length: 5 }, (_, i) =>
      sight(1500 * random(), 1500 * random(), i === 0 ? 360 * random() : 16 * random() - 8),
    );
    const best = supportedPlace(lines, 6.4);
    const valueAt = robustLogLikelihood(lines, 6.4);
    let grid = -Infinity;
    for (let eM = -1000; eM <= 2500; eM += 50) {
      for (let nM = -1000; nM <= 2500; nM += 50) {
        // Within 30 m of a station its own bearing may fit for free; such spikes are no places to walk to.
        const point = at(eM, nM);
        if (lines.every((line) => distanceM(line.at, point) > 30)) grid = Math.max(grid, valueAt(point));
      }
    }
    expect(grid, `set ${seed}`).toBeLessThanOrEqual(best.logLikelihood + 1e-6);
  }
});

test('the guess grid is highest in the cell of the tag when bearings are exact, and covers all stations', () => {
  const lines = [sight(0, 0, 0), sight(1000, 0, 0), sight(200, 900, 0)];
  const { southWest, cellM, columns, rows, logLikelihood, best } = guessFromBearings(lines, 5);
  const highest = logLikelihood.indexOf(Math.max(...logLikelihood));
  const centre = at(southWest.eM + ((highest % columns) + 0.5) * cellM, southWest.nM + (Math.floor(highest / columns) + 0.5) * cellM);
  expect(logLikelihood).toHaveLength(columns * rows);
  expect(distanceM(centre, tag)).toBeLessThan(1.5 * cellM);
  expect(distanceM(best!, tag)).toBeLessThan(1e-3);
  for (const line of lines) {
    expect(line.at.eM).toBeGreaterThan(southWest.eM);
    expect(line.at.nM).toBeLessThan(southWest.nM + rows * cellM);
  }
});
