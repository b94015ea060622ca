import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { patternCommand } from '../../src/cli/pattern';

type DrawnSet = {
  frequencyMHz: number;
  mount: 'h' | 'v';
  elements: { alongM: number; lengthM: number; diameterM: number; driven?: boolean; amplitude?: number; phaseDeg?: number }[];
  widthDeg: number | null;
  frontToBackDb: number;
  azimuthDbi: number[];
  elevationDbi: number[];
};
// Computed independently for this project with NEC-2; the file's own note says how, and which sets were left out.
const { sets }: { sets: DrawnSet[] } = JSON.parse(readFileSync('tests/outside/data/antenna-nec2-drawn.json', 'utf8'));

test('the drawn sets have 2 to 8 elements, both mounts, one to four driven, thin and thick rods, 30 to 460 MHz', () => {
  const thickness = sets.flatMap(({ frequencyMHz, elements }) => elements.map(({ diameterM }) => (diameterM * frequencyMHz) / 299.792458));
  expect(sets).toHaveLength(30);
  expect([...new Set(sets.map(({ elements }) => elements.length))].sort()).toEqual([2, 3, 4, 5, 6, 7, 8]);
  expect(sets.filter(({ mount }) => mount === 'v').length).toBeGreaterThan(9);
  expect(sets.filter(({ elements }) => elements.filter(({ driven }) => driven).length > 1).length).toBeGreaterThan(9);
  expect(Math.min(...thickness)).toBeLessThan(0.0006);
  expect(Math.max(...thickness)).toBeGreaterThan(0.008);
  expect(Math.min(...sets.map(({ frequencyMHz }) => frequencyMHz))).toBeLessThan(35);
  expect(Math.max(...sets.map(({ frequencyMHz }) => frequencyMHz))).toBeGreaterThan(430);
});

/** Largest difference where the reference is within 15 dB of its peak. */
function worstDb(got: readonly { coDbi: number }[], want: readonly number[]): number {
  const peak = Math.max(...want);
  return Math.max(...want.map((dbi, i) => (dbi > peak - 15 ? Math.abs(got[i]!.coDbi - dbi) : 0)));
}

describe.each(sets.map((set, i) => ({ set, i, mount: set.mount, count: set.elements.length, mhz: set.frequencyMHz })))(
  'drawn set $i: $count elements, mount $mount, $mhz MHz',
  ({ set }) => {
    const { frequencyMHz, elements, mount } = set;
    const cuts = patternCommand({ elementsText: JSON.stringify({ frequencyMHz, elements, mount }) });

    test('gain within 0.15 dB and front to back within 1 dB of NEC-2', () => {
      expect(Math.abs(cuts.forwardDbi - set.azimuthDbi[0]!)).toBeLessThan(0.15);
      expect(Math.abs(cuts.frontToBackDb - set.frontToBackDb)).toBeLessThan(1);
    });
    test('both cuts within 0.5 dB of NEC-2 down to 15 dB under the peak', () => {
      expect(worstDb(cuts.azimuth, set.azimuthDbi)).toBeLessThan(0.5);
      expect(worstDb(cuts.elevation, set.elevationDbi)).toBeLessThan(0.5);
    });
    test('width within 1.5 degrees of NEC-2', () => {
      expect(cuts.widthDeg === null).toBe(set.widthDeg === null);
      expect(Math.abs((cuts.widthDeg ?? 0) - (set.widthDeg ?? 0))).toBeLessThan(1.5);
    });
  },
);
