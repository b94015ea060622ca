import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'core', include: ['tests/{core,outside,house,cli,golden,fuzz,faults}/**/*.test.ts'], testTimeout: 60_000 } },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          setupFiles: ['tests/browser/failOnTroubles.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
          globalSetup: ['tests/browser/buildPage.ts'],
          // Three at a time: they wait for seconds of play more than they compute. After the core, which takes all cores.
          maxWorkers: 3,
          sequence: { groupOrder: 1 },
          // A browser that came to no page in time is asked once more; what a page shows late, wrongly or not at all is not.
          retry: { count: 1, condition: /page\.goto: Timeout \d+ms exceeded/ },
        },
      },
    ],
    coverage: { provider: 'v8', include: ['src/core/**'], reporter: ['text-summary', 'json-summary'], reportsDirectory: 'coverage' },
  },
});
