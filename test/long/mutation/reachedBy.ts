/** Which files of tests reach which mutants, and how long each takes: every file is run once on sources that tell it. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Mutant, watched } from './mutants.ts';
import { root, TestRunner } from './testRunner.ts';

export interface Reach {
  /** By the number of a mutant. */
  readonly tests: readonly (readonly string[])[];
  /** By the file of tests. */
  readonly milliseconds: ReadonlyMap<string, number>;
}

/** @throws where a test fails without a mutant: it would notice every one */
export async function reachedBy(mutants: readonly Mutant[], testFiles: readonly string[]): Promise<Reach> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-reached-'));
  const told = join(folder, 'reached.jsonl');
  process.env.PLATEWRIGHT_REACHED = told;
  const runner = await TestRunner.start([fileURLToPath(new URL('reached.ts', import.meta.url))]);
  const milliseconds = new Map<string, number>();
  try {
    const numbered = [...mutants.entries()];
    for (const [file, some] of Map.groupBy(numbered, ([, mutant]) => mutant.file))
      runner.put(file, watched(readFileSync(`${root}${file}`, 'utf8'), some));
    for (const file of testFiles) {
      const ran = await runner.run(file);
      if (ran.failures.length > 0) throw new Error(`without a mutant: ${ran.failures.join('; ')}`);
      milliseconds.set(file, ran.milliseconds);
    }
    const lines = readFileSync(told, 'utf8').trimEnd().split('\n');
    const tests = mutants.map((): string[] => []);
    for (const { file, reached } of lines.map((line): { file: string; reached: number[] } => JSON.parse(line)))
      for (const number of reached) tests[number]!.push(relative(root, file));
    return { tests, milliseconds };
  } finally {
    await runner.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
