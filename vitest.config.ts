import { defineConfig } from 'vitest/config';

/** They count what is done in a given time, so nothing else may run beside them. */
const TIMED = 'tests/trials/**/*.test.ts';

export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'together',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/e2e/**', TIMED, 'node_modules/**'],
          // The ears wait for processes of their own while the other files compute.
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: { name: 'alone', include: [TIMED], maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
