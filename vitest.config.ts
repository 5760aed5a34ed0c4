import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'test/**/*.test.ts'],
    pool: 'threads',
    isolate: false,
    // The long run gives every property at least 100,000 cases.
    testTimeout: process.env.PLATEWRIGHT_LONG === undefined ? 30_000 : 3_600_000,
    reporters: ['default', './test/countReporter.ts'],
  },
});
