import { expect, test } from 'vitest';
import { hearingRows } from '../../src/cli/fidelity/hearingRows';

// Each row carries its published source; the tolerance is the row's own.
test.each(hearingRows.map((row) => [row.claim, row] as const))('%s', (_claim, row) => {
  expect(Math.abs(row.value() - row.reference), `${row.value()} ${row.unit}; ${row.source}`).toBeLessThanOrEqual(row.tolerance);
});
