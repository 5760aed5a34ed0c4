import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, test } from 'vitest';
import { hostileFiles } from './hostileFiles.fixture.ts';

interface Read {
  readonly name: string;
  readonly gave: string;
  /** Of all threads: a machine that is busy with other things does not count. */
  readonly cpuSeconds: number;
  readonly answered: number;
  readonly peakMegabytes: number;
}

/** What one file takes is not told apart from what the ones before it left to be collected: a new program for every few. */
const filesAProgram = 6;

describe('files made to do harm', () => {
  const reads = new Map<string, Read>();
  beforeAll(async () => {
    let out = '';
    const folder = mkdtempSync(join(tmpdir(), 'platewright-hostile-'));
    const make = fileURLToPath(new URL('./makeHostileFiles.fixture.ts', import.meta.url));
    const read = fileURLToPath(new URL('./readHostileFiles.fixture.ts', import.meta.url));
    const run = promisify(execFile);
    try {
      await run(process.execPath, [make, folder]);
      for (let from = 0; from < hostileFiles.length; from += filesAProgram)
        out += (await run(process.execPath, [read, folder, String(from), String(from + filesAProgram)])).stdout;
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
    for (const line of out.trimEnd().split('\n')) {
      const read: Read = JSON.parse(line);
      reads.set(read.name, read);
    }
  }, 300_000);

  test('[FIL-1] there are forty and more', () => {
    expect(hostileFiles.length).toBeGreaterThanOrEqual(40);
    expect(new Set(hostileFiles.map(({ name }) => name)).size).toBe(hostileFiles.length);
  });

  // The limits of the aim: 5 seconds, 600 MB, and the program answers.
  test.each(hostileFiles)('[FIL-1] $name: $gives', ({ name, gives }) => {
    const read = reads.get(name);
    expect(read?.gave).toBe(gives);
    expect(read!.cpuSeconds).toBeLessThan(5);
    expect(read!.peakMegabytes).toBeLessThan(600);
    expect(read!.answered).toBeGreaterThan(0);
  });
});
