import { availableParallelism, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const isLong = process.env.PLATEWRIGHT_LONG !== undefined;

/** What harms the program from outside: hostile files and requests, kills, full disks, lost lines and servers, folders of other modes. `npm run test:hostile` */
const hostile = [
  'test/{hostileArchives,hostileFiles}.test.ts',
  'test/e2e/{badAnswers,draftsMeanwhile,lock,longImport,programGone,refusals,release,restoreDrill,security,start}.test.ts',
  'test/long/{fuzz,kills}.test.ts',
  'src/adapters/clients/vaultDamage.test.ts',
  'src/adapters/files/{hostileFiles,readBytes}.test.ts',
  'src/adapters/storage/{fullDisk,postgresAway,postgresKills}.test.ts',
  'src/server/{hostileRequests,streamedForm}.test.ts',
];

/** A browser and the program. */
const browser = ['test/e2e/**/*.test.ts'];

/** Programs of their own, PostgreSQL, the data folder: seconds a file. */
const programs = [
  'test/{cli,clientsCommand,guide,handout,packages,walls}.test.ts',
  'test/long/**/*.test.ts',
  'src/adapters/{archive,clients,storage}/**/*.test.ts',
  'src/server/{app,archives}.test.ts',
];

/** They measure how long something takes, or look at what else runs on the machine: one after the other, when all others are done. */
const alone = ['src/adapters/clients/tries.test.ts', 'src/adapters/files/printPdf.test.ts', 'src/cli/closeOnSignal.test.ts'];

/** What a thread can compute by itself. The mutants of the long run are tried with these. */
export const quick = { include: ['src/**/*.test.ts', 'test/**/*.test.ts'], exclude: [...browser, ...programs, ...alone, ...hostile] };

/** A worker with its browser and its program takes a gigabyte and a half, and waits for them a good part of its time. */
const workers = Math.max(1, Math.min(availableParallelism() + 1, Math.floor(totalmem() / 2 ** 30 / 1.5)));

const builds = ['./test/e2e/builtOnce.ts', './test/buildProgram.ts'];

const pathOf = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

const project = (name: string, include: string[], exclude: string[] = [], globalSetup: string[] = []) => ({
  extends: true as const,
  test: { name, include, exclude, globalSetup, maxWorkers: workers, sequence: { groupOrder: 0 } },
});

export default defineConfig({
  test: {
    pool: 'threads',
    isolate: false,
    // Node loads the modules as it does for the program: half the work of taking each through a builder.
    experimental: { viteModuleRunner: false },
    // What hangs ends; a machine that is busy does not count. The long run gives every property thousands of cases.
    testTimeout: isLong ? 3_600_000 : 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 30_000 } },
    setupFiles: ['./test/seed.ts'],
    reporters: ['default', './test/countReporter.ts'],
    // Programs that a test starts keep their compiled code, as those of bin/platewright do: a third of the time of a start.
    env: { NODE_COMPILE_CACHE: pathOf('node_modules/.cache/platewright'), PLATEWRIGHT_BUILT_PROGRAM: pathOf('dist/program/main.mjs') },
    // Those of one group begin in the order of their names: what takes longest begins first.
    projects: [
      project('browser', browser, hostile, builds),
      project('programs', programs, [...alone, ...hostile], ['./test/buildProgram.ts']),
      project('quick', quick.include, quick.exclude),
      project('hostile', hostile, [], builds),
      { extends: true, test: { name: 'alone', include: alone, maxWorkers: 1, sequence: { groupOrder: 1 } } },
    ],
  },
});
