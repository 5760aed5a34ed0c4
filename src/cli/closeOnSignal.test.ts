import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const program = fileURLToPath(new URL('closeOnSignal.fixture.ts', import.meta.url));

/** Sends signals with pauses before each, in milliseconds; the exit code, and how long it took from the first. */
async function ended(how: 'never' | 'soon', signals: readonly (readonly [pause: number, signal: NodeJS.Signals])[]) {
  const child = spawn(process.execPath, [program, how], { stdio: ['ignore', 'pipe', 'inherit'] });
  await once(child.stdout, 'data');
  const exit = once(child, 'exit');
  const start = performance.now();
  for (const [pause, signal] of signals) {
    await setTimeout(pause);
    child.kill(signal);
  }
  const [code] = await exit;
  return { code: code as number | null, tookMs: performance.now() - start };
}

// 128 + the number of the signal is what a shell tells of a program that a signal ended (POSIX.1-2017, sh, 2.8.2: greater than 128).
describe('a signal', () => {
  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('[SRV-47] %s: closed, and ended with 0', async signal => {
    expect((await ended('soon', [[0, signal]])).code).toBe(0);
  });
  test('[SRV-47] a second Ctrl-C ends at once what does not close', async () => {
    const { code, tookMs } = await ended('never', [
      [0, 'SIGINT'],
      [800, 'SIGINT'],
    ]);
    expect([code, tookMs < 2_000]).toEqual([130, true]);
  });
  test('[SRV-47] one that comes twice by way of a launcher is one', async () => {
    const { code, tookMs } = await ended('never', [
      [0, 'SIGTERM'],
      [100, 'SIGTERM'],
    ]);
    expect([code, tookMs > 2_000, tookMs < 4_000]).toEqual([143, true, true]);
  });
});
