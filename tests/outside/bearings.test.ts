import { expect, test } from 'vitest';
import { bearingRows } from '../../src/cli/fidelity/bearingRows';

// Bearings by ear over many drawn pulses; each row carries its published source and tolerance.
test.each(bearingRows)('$claim ($mark, $source)', ({ value, reference, tolerance }) => {
  expect(Math.abs(value() - reference)).toBeLessThanOrEqual(tolerance);
});
