import { fileURLToPath } from 'node:url';

/** What Node is started with: in a run of the tests the program as buildProgram.ts made it of the sources (vitest.config.ts), else the sources themselves. */
export const program = process.env.PLATEWRIGHT_BUILT_PROGRAM ?? fileURLToPath(new URL('../src/cli/main.ts', import.meta.url));
