import { expect, test } from 'vitest';
import { gainDistanceOf, onLineDb, PLANE_EARTH_PER_DECADE_DB } from '../../../src/core/debrief/gainDistance';
import type { Evidence } from '../../../src/core/technique/habit';
import { distanceM } from '../../../src/core/units/frames';
import { handmadeRun, MIDDLE, out } from '../technique/handmadeRun';

/** A walk straight away from a tag in the middle whose least gain follows `leastDb` of the distance. */
function walkAway(leastDb: (m: number) => number | null, toM = 1_600): Evidence {
  const run = handmadeRun((hands) => hands.walkTo(out(90, toM), 4), { startAt: out(90, 30) });
  const pulses = run.run.pulses.map((pulse) => {
    const m = distanceM(run.run.states[pulse.heard.atS * 20]!.at, MIDDLE);
    return { ...pulse, truth: { ...pulse.truth, distanceM: m, leastGainDb: leastDb(m) } };
  });
  return { ...run, run: { ...run.run, pulses } };
}

test('40 dB a decade are found as 40, and told as 12.04 dB for each doubling', () => {
  const { fit } = gainDistanceOf(walkAway((m) => 10 + 40 * Math.log10(m / 500)));
  expect(fit!.inSight).toBe(true);
  expect(fit!.perDecadeDb).toBeCloseTo(PLANE_EARTH_PER_DECADE_DB, 6);
  expect(fit!.perDoublingDb).toBeCloseTo(12.0412, 4);
  expect(onLineDb(fit!, fit!.perDecadeDb, 500)).toBeCloseTo(10, 6);
});

test('rows are half octaves with the quartiles of what was met there', () => {
  const { rows } = gainDistanceOf(walkAway((m) => 10 + 40 * Math.log10(m / 500)));
  for (const { fromM, toM, lowDb, middleDb, highDb, inSightShare } of rows) {
    if (fromM > 0) expect(toM / fromM).toBeCloseTo(Math.SQRT2, 9);
    expect(lowDb).toBeLessThanOrEqual(middleDb);
    expect(middleDb).toBeLessThanOrEqual(highDb);
    expect(middleDb).toBeGreaterThanOrEqual(10 + 40 * Math.log10(Math.max(25, fromM) / 500));
    expect(middleDb).toBeLessThanOrEqual(10 + 40 * Math.log10(toM / 500));
    expect(inSightShare).toBe(1);
  }
  expect(rows.length).toBeGreaterThan(8);
});

test('standing long at one distance does not turn the line', () => {
  const away = walkAway((m) => 20 + 40 * Math.log10(m / 500) + (m > 400 && m < 410 ? 3 : 0));
  expect(gainDistanceOf(away).fit!.perDecadeDb).toBeCloseTo(40, 0);
});

test('pulses at the end of the gain range, and those that no setting hears, make no line', () => {
  const { fit } = gainDistanceOf(walkAway((m) => (m < 300 ? -30 : m > 1_400 ? null : 40 * Math.log10(m / 500))));
  expect(fit!.perDecadeDb).toBeCloseTo(40, 6);
});

test('less than a doubling of distance gives no line', () => {
  expect(gainDistanceOf(walkAway(() => 10, 40)).fit).toBeNull();
});
