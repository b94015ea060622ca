import { describe, expect, test } from 'vitest';
import { deltaBullingtonRows, PROFILES_FOLDER } from '../../src/cli/fidelity/deltaBullingtonRows';
import { propagationRows } from '../../src/cli/fidelity/propagationRows';

describe('propagation against published and independent values', () => {
  test.each(
    propagationRows.map(
      (row) => [`${row.claim} is ${row.reference} ${row.unit} within ${row.tolerance} (${row.mark}: ${row.source})`, row] as const,
    ),
  )('%s', (_title, row) => {
    expect(Math.abs(row.value() - row.reference)).toBeLessThanOrEqual(row.tolerance);
  });
});

if (deltaBullingtonRows.length === 0)
  console.info(`the ITU profiles are not at ${PROFILES_FOLDER}: delta-Bullington is not compared with its published validation here`);

describe.runIf(deltaBullingtonRows.length > 0)('delta-Bullington against the published validation profiles', () => {
  test.each(deltaBullingtonRows.map((row) => [row.claim, row.reference, row] as const))(
    '%s loses %f dB within 0.01',
    (_claim, reference, row) => {
      expect(Math.abs(row.value() - reference)).toBeLessThanOrEqual(row.tolerance);
    },
  );
});
