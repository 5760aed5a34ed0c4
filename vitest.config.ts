import { availableParallelism, totalmem } from 'node:os';
import { defineConfig } from 'vitest/config';
import { compileCache } from './bin/setup.mjs';

const all = ['src/**/*.test.ts', 'test/**/*.test.ts'];

/** They need a browser, PostgreSQL, programs of their own or more than a second. */
const withPrograms = [
  'test/{cli,clientsCommand,guide,handout,hostileArchives,hostileFiles,packages,walls}.test.ts',
  'test/{e2e,long}/**/*.test.ts',
  'src/adapters/archive/*.test.ts',
  'src/adapters/clients/*.test.ts',
  'src/adapters/files/hostileFiles.test.ts',
  'src/adapters/storage/*.test.ts',
  'src/server/*.test.ts',
];

/** They measure how long something takes, or look at what else runs on the machine: one after the other, after all others. */
const alone = ['src/adapters/clients/tries.test.ts', 'src/adapters/files/printPdf.test.ts', 'src/cli/closeOnSignal.test.ts'];

/** A worker with its browser and the programs that it starts takes about a gigabyte and a half, and waits for them a third of the time. */
const workers = Math.max(1, Math.min(availableParallelism() + 1, Math.floor(totalmem() / 1.5 / 2 ** 30)));

const project = (name: string, groupOrder: number, maxWorkers: number, include: string[], exclude: string[] = []) => ({
  extends: true as const,
  test: { name, include, exclude, maxWorkers, sequence: { groupOrder } },
});

export default defineConfig({
  test: {
    pool: 'threads',
    isolate: false,
    // The long run gives every property at least 100,000 cases.
    testTimeout: process.env.PLATEWRIGHT_LONG === undefined ? 30_000 : 3_600_000,
    reporters: ['default', './test/countReporter.ts'],
    env: { NODE_COMPILE_CACHE: compileCache },
    projects: [
      project('programs', 0, workers, withPrograms, alone),
      project('quick', 0, workers, all, [...withPrograms, ...alone]),
      project('alone', 1, 1, alone),
    ],
  },
});
