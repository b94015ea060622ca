import { describe, expect, test } from 'vitest';
import { wireHit } from '../../../src/core/radio/thinWire';
import { plateEchoRatio } from '../../../src/core/radio/wallEcho';

const wire = { from: [0, 0, 10], to: [200, 0, 10], radiusM: 0.006 } as const;

describe('thin wires and plates', () => {
  test('the point of a wire hit has equal angles to both ends within 1e-9', () => {
    const hit = wireHit(wire, [20, -150, 1], [150, 60, 2], 2);
    const [sourceCos, targetCos] = [(hit.at[0] - 20) / hit.r1M, (150 - hit.at[0]) / hit.r2M];
    expect(Math.abs(sourceCos - targetCos)).toBeLessThan(1e-9);
  });

  test('two halves of a wire give what the whole one gives within 1e-9', () => {
    const [source, target] = [
      [20, -150, 1],
      [150, 60, 2],
    ] as const;
    const whole = wireHit(wire, source, target, 2).window;
    const parts = [wireHit({ ...wire, to: [80, 0, 10] }, source, target, 2), wireHit({ ...wire, from: [80, 0, 10] }, source, target, 2)];
    expect(Math.abs(parts[0]!.window.re + parts[1]!.window.re - whole.re)).toBeLessThan(1e-9);
    expect(Math.abs(parts[0]!.window.im + parts[1]!.window.im - whole.im)).toBeLessThan(1e-9);
  });

  test('a span fades out beyond its end: 100 m past the end less than a tenth of its field is left', () => {
    const { window } = wireHit(wire, [300, -30, 1], [300, 30, 2], 2);
    expect(Math.hypot(window.re, window.im)).toBeLessThan(0.1);
  });

  test('a plate never sends back more than a mirror of its reflection coefficient', () => {
    expect(plateEchoRatio(0.5, 1e6, 1, 2, 50, 50, 100)).toBeCloseTo(0.5, 12);
  });
});
