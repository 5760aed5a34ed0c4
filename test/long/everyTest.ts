/** Every test with 5,000 to 100,000 generated cases where others have a few hundred, and with what only the long run does. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const results = z.object({
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  numPendingTests: z.number(),
  testResults: z.array(
    z.object({
      status: z.string(),
      name: z.string(),
      message: z.string(),
      assertionResults: z.array(z.object({ status: z.string(), fullName: z.string() })),
    }),
  ),
});

export interface EveryTest {
  readonly figures: { readonly passed: number; readonly failed: number; readonly skipped: number };
  /** The names of those that failed. */
  readonly found: readonly string[];
}

/** @param files the beginnings of paths; all when there is none */
export function everyTest(seed: number, files: readonly string[]): EveryTest {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), 'platewright-long-'));
  try {
    const out = join(folder, 'results.json');
    const vitest = [join(root, 'node_modules/vitest/vitest.mjs'), 'run', ...files];
    const { status } = spawnSync(process.execPath, [...vitest, '--reporter=default', '--reporter=json', `--outputFile.json=${out}`], {
      cwd: root,
      env: { ...process.env, PLATEWRIGHT_LONG: '1', PLATEWRIGHT_SEED: String(seed) },
      stdio: ['ignore', 2, 2],
    });
    const { numPassedTests, numFailedTests, numPendingTests, testResults } = results.parse(JSON.parse(readFileSync(out, 'utf8')));
    const found = testResults
      .filter(file => file.status === 'failed')
      .flatMap(({ name, message, assertionResults }) => [
        ...(message === '' ? [] : [`${name.slice(root.length)}: ${message.slice(0, 300)}`]),
        ...assertionResults.filter(test => test.status === 'failed').map(({ fullName }) => `${name.slice(root.length)}: ${fullName}`),
      ]);
    const isTold = status === 0 || found.length > 0;
    return {
      figures: { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests },
      found: isTold ? found : [`the tests ended with ${status}`],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
