import { defineConfig } from 'vitest/config';

/** Tests that drive a real Chromium; each skips with one clear line where there is none. */
export default defineConfig({
  test: {
    include: ['tests/e2e/**/*.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 120_000,
    fileParallelism: false,
    // A real browser on a busy machine: a test may be tried once more, never more often.
    retry: 1,
  },
});
