import { expect, test } from 'vitest';
import { tradeRows } from '../../src/cli/fidelity/tradeRows';

test.each(tradeRows)('$claim: $reference $unit within $tolerance ($mark, $source)', ({ value, reference, tolerance }) => {
  expect(Math.abs(value() - reference)).toBeLessThanOrEqual(tolerance);
});
