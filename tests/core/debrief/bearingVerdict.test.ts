import { expect, test } from 'vitest';
import { bearingVerdict } from '../../../src/core/debrief/bearingVerdict';
import type { ArrowKind, WaveArrow } from '../../../src/core/debrief/lossBudget';

const wave = (kind: ArrowKind, azimuthDeg: number, powerDbm: number): WaveArrow => ({
  kind,
  azimuthDeg,
  powerDbm,
  lossDb: { freeSpace: 70 },
});
const WAVES = [wave('hillside', 100, -90), wave('direct', 0, -95), wave('scatter', 200, -110)];
const taken = (takenDeg: number, excessDb: number | null) => ({ takenDeg, errorDeg: ((takenDeg + 540) % 360) - 180, excessDb });

test.each([
  [10, 8, 'tag'],
  [-10, 8, 'tag'],
  [11, 8, 'roughly'],
  [-20, 8, 'roughly'],
  [21, 8, 'astray'],
  [100, 8, 'echo'],
  [119, 8, 'echo'],
  [121, 8, 'astray'],
  [280, 21, 'back-signal'],
  [280, 20, 'astray'],
  [306, 21, 'wide-arc'],
] as const)('a bearing %i degrees off the tag at %i dB of excess is told as %s', (offDeg, excessDb, kind) => {
  expect(bearingVerdict(taken(offDeg, excessDb), WAVES).kind).toBe(kind);
});

test('an echo is named by the strongest wave on that side', () => {
  expect(bearingVerdict(taken(100, 8), WAVES)).toEqual({ kind: 'echo', wave: 'hillside' });
  expect(bearingVerdict(taken(200, 8), WAVES)).toEqual({ kind: 'echo', wave: 'scatter' });
});

test('without an excess known nothing is laid on the gain', () => {
  expect(bearingVerdict(taken(280, null), WAVES).kind).toBe('astray');
});
