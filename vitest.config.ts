import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/e2e/**', 'node_modules/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // The trials and the ears wait for disks and for processes of their own while the other files compute.
    maxWorkers: 2,
  },
});
