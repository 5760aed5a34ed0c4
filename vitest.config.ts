import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'test/**/*.test.ts'],
    pool: 'threads',
    isolate: false,
    testTimeout: 30_000,
    reporters: ['default', './test/countReporter.ts'],
  },
});
