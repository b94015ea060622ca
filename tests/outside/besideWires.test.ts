import { expect, test } from 'vitest';
import { lineGround, standsOf, twoSidedTests } from '../../src/cli/fidelity/besideWires';
import { share } from '../../src/cli/fidelity/loudest';

// Seeded samples; tests/bench/besideWires.ts prints larger ones, on steeper ground too.
test('20 to 40 m from a high line, tag hidden, the line within 3 dB of all else or over it: over 60 % of the loudest headings within 30 degrees of its strongest point, 30 points more than without its wires (common practice, no source)', () => {
  const stands = [0, 1, 2, 3].flatMap((seed) => standsOf(lineGround(seed, 'plateau', 250), seed));
  const ruled = stands.filter((s) => s.hidden && s.lineOverRestDb > -3);
  expect(ruled.length).toBeGreaterThanOrEqual(20);
  const [wired, bare] = [share(ruled.map((s) => s.gathers)), share(ruled.map((s) => s.gathersBare))];
  expect(wired).toBeGreaterThan(0.6);
  expect(wired - bare).toBeGreaterThanOrEqual(0.3);
}, 120_000);

test('two-sided test 25 m from the wires, three stands a side: right in at least 90 % of 100 set-ups on ridges of 60 m (common practice, no source)', () => {
  const right = [0, 1, 2, 3].flatMap((seed) => twoSidedTests(lineGround(seed, 'ridged', 60), 60)).map((t) => t.right);
  expect(right.length).toBeGreaterThanOrEqual(100);
  expect(share(right.slice(0, 100))).toBeGreaterThanOrEqual(0.9);
}, 120_000);
