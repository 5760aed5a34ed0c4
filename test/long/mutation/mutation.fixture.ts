/** A program of its own that tries mutants, so that one which never ends can be ended with it. Told over IPC what to try, it tells each file of tests that it begins. */
import { readFileSync } from 'node:fs';
import { type Mutant, mutated } from './mutants.ts';
import { root, TestRunner } from './testRunner.ts';

export interface Task {
  readonly mutant: Mutant;
  /** The files of tests that reach it. */
  readonly tests: readonly string[];
}
export type Told = { readonly begins: string } | { readonly noticedBy: string | undefined };

const runner = await TestRunner.start();
const tell = (told: Told): void => void process.send?.(told);

// It ends with the program that began it.
process.on('disconnect', () => process.exit());
process.on('message', async ({ mutant, tests }: Task) => {
  runner.put(mutant.file, mutated(readFileSync(`${root}${mutant.file}`, 'utf8'), mutant));
  let noticedBy: string | undefined;
  for (const test of tests) {
    tell({ begins: test });
    if ((await runner.run(test)).failures.length === 0) continue;
    noticedBy = test;
    break;
  }
  runner.put(mutant.file, undefined);
  tell({ noticedBy });
});
