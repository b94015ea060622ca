import { afterAll, expect } from 'vitest';
import { policyTroubles } from './policyWatch';

// Every file of browser tests fails for it, whatever it tests.
afterAll(() => {
  expect(policyTroubles).toEqual([]);
});
