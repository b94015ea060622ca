import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DIPOLE_REFERENCE, YAGI3_REFERENCE } from '../../src/cli/fidelity/antennaReference';
import { antennaRows } from '../../src/cli/fidelity/antennaRows';
import { patternCommand } from '../../src/cli/pattern';
import { antennaById } from '../../src/core/antenna/catalogue';
import { powerOf } from '../../src/core/antenna/pattern';

const read = (name: string) => JSON.parse(readFileSync(`tests/outside/data/${name}.json`, 'utf8'));

test.each(antennaRows)('$claim: $reference $unit within $tolerance ($mark, $source)', ({ value, reference, tolerance }) => {
  expect(Math.abs(value() - reference)).toBeLessThanOrEqual(tolerance);
});

// Both files: computed independently for this project, their own notes say how.
test.each([
  ['antenna-yagi3-hand-H', YAGI3_REFERENCE],
  ['antenna-dipole-H', DIPOLE_REFERENCE],
] as const)('the reference cuts carried by the program are those of %s', (name, reference) => {
  const { cuts } = read(name);
  expect(reference.azimuthDbi).toEqual(cuts.azimuth_xy.co_dBi.slice(0, 37));
  expect(reference.elevationDbi).toEqual(cuts.elevation_xz.co_dBi.slice(0, 37));
});

test('the complex field of the hand Yagi is that of the reference over the whole sphere, within 0.03 of its peak', () => {
  const rows: number[][] = read('antenna-yagi3-hand-H').sphere10deg.rows;
  const pattern = antennaById('yagi3').pattern(150, 150);
  const out = new Float64Array(4);
  const pairs = rows.map(([thetaDeg, phiDeg, ...want]) => {
    const [theta, phi] = [(thetaDeg! * Math.PI) / 180, (phiDeg! * Math.PI) / 180];
    pattern.fieldInto(Math.sin(theta) * Math.cos(phi), Math.sin(theta) * Math.sin(phi), Math.cos(theta), out);
    return { want, got: [...out], pole: Math.abs(Math.sin(theta)) < 1e-6 };
  });
  // The reference's own phase is common to all directions: turn ours so that both agree straight ahead.
  const ahead = rows.findIndex(([theta, phi]) => theta === 90 && phi === 0);
  const phase = Math.atan2(pairs[ahead]!.want[3]!, pairs[ahead]!.want[2]!) - Math.atan2(pairs[ahead]!.got[3]!, pairs[ahead]!.got[2]!);
  const [c, s] = [Math.cos(phase), Math.sin(phase)];
  const worst = Math.max(
    ...pairs
      .filter(({ pole }) => !pole)
      .flatMap(({ want, got }) =>
        [0, 2].map((at) => Math.hypot(got[at]! * c - got[at + 1]! * s - want[at]!, got[at]! * s + got[at + 1]! * c - want[at + 1]!)),
      ),
  );
  expect(worst / 10 ** (8.77 / 20)).toBeLessThan(0.03);
});

type ReferenceSet = {
  frequencyMHz: number;
  elements: { alongM: number; lengthM: number; diameterM: number; driven?: boolean }[];
  widthDeg: number;
  azimuthDbi: number[];
  elevationDbi: number[];
};
// Computed independently for this project with NEC-2; the file's own note says how.
const nec: { sets: ReferenceSet[]; loopAzimuthDbi: number[]; whipAzimuthDbi: number[] } = read('antenna-nec2');

/** Largest difference where the reference is within 15 dB of its peak. */
function worstDb(got: readonly number[], want: readonly number[]): number {
  const peak = Math.max(...want);
  return Math.max(...want.map((dbi, i) => (dbi > peak - 15 ? Math.abs(got[i]! - dbi) : 0)));
}

describe.each(nec.sets.map((set, i) => ({ set, i, count: set.elements.length })))('random antenna $i of $count elements', ({ set }) => {
  const { frequencyMHz, elements } = set;
  const cuts = patternCommand({ elementsText: JSON.stringify({ frequencyMHz, elements, mount: 'h' }) });
  const co = (cut: typeof cuts.azimuth) => cut.slice(0, 37).map(({ coDbi }) => coDbi);

  test('gain is that of NEC-2 within 0.15 dB', () => {
    expect(Math.abs(cuts.forwardDbi - set.azimuthDbi[0]!)).toBeLessThan(0.15);
  });
  test('both cuts are those of NEC-2 within 0.5 dB, down to 15 dB under the peak', () => {
    expect(worstDb(co(cuts.azimuth), set.azimuthDbi)).toBeLessThan(0.5);
    expect(worstDb(co(cuts.elevation), set.elevationDbi)).toBeLessThan(0.5);
  });
  test('width is that of NEC-2 within 1.5 degrees', () => {
    expect(Math.abs(cuts.widthDeg! - set.widthDeg)).toBeLessThan(1.5);
  });
  test('front to back is that of NEC-2 within 1 dB', () => {
    expect(Math.abs(cuts.frontToBackDb - (set.azimuthDbi[0]! - set.azimuthDbi[36]!))).toBeLessThan(1);
  });
});

test.each([
  ['loop', nec.loopAzimuthDbi],
  ['whip', nec.whipAzimuthDbi],
] as const)('%s: all round in its own plane within 0.4 dB of NEC-2, down to 15 dB under the peak', (id, want) => {
  const pattern = antennaById(id).pattern(150, 150);
  const out = new Float64Array(4);
  const got = want.map((_, i) => {
    pattern.fieldInto(Math.cos((i * Math.PI) / 36), Math.sin((i * Math.PI) / 36), 0, out);
    return 10 * Math.log10(powerOf(out));
  });
  expect(worstDb(got, want)).toBeLessThan(0.4);
});

test('hand Yagi: front to back falls from over 24 to 16 to 10 dB between 148, 150 and 152 MHz', () => {
  const out = new Float64Array(4);
  const frontToBackDb = (mhz: number) => {
    const pattern = antennaById('yagi3').pattern(mhz, 150);
    pattern.fieldInto(-1, 0, 0, out);
    return pattern.forwardDbi - 10 * Math.log10(powerOf(out));
  };
  expect(frontToBackDb(148)).toBeGreaterThan(24);
  expect(Math.abs(frontToBackDb(150) - 16)).toBeLessThan(1);
  expect(Math.abs(frontToBackDb(152) - 10)).toBeLessThan(1);
});
