/** Loaded before each test file where it is found out which mutants its tests reach: what was reached is added to the file that PLATEWRIGHT_REACHED names. */
import { appendFileSync } from 'node:fs';
import { afterAll, expect } from 'vitest';

const reached = new Set<number>();
Object.assign(globalThis, { reached: (mutant: number) => reached.add(mutant) });
afterAll(() => {
  const entry = { file: expect.getState().testPath, reached: [...reached] };
  appendFileSync(process.env.PLATEWRIGHT_REACHED!, `${JSON.stringify(entry)}\n`);
});
