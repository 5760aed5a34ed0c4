import { spawn } from 'node:child_process';
import { afterEach, expect, test } from 'vitest';
import { another, cleanUp, codeOf, faultOf, filled, newFolder, open, passphrase, peek, program, tamper } from './vaultWorld.fixture.ts';

afterEach(cleanUp);

/** A locked vault, and its folder. Pauses: own decision, two slips free, then half a second and double each time. */
async function locked(): Promise<{ readonly folder: string; readonly vault: Awaited<ReturnType<typeof open>> }> {
  const folder = newFolder();
  const vault = await filled(folder, 1);
  await vault.changePassphrase(undefined, passphrase);
  vault.lock();
  return { folder, vault };
}

async function timed(work: Promise<unknown>): Promise<number> {
  const begun = performance.now();
  await work.catch(() => undefined);
  return performance.now() - begun;
}

test('[VLT-7] after two slips each wrong try makes the next one wait longer, side by side as well, the right one too', async () => {
  const { vault } = await locked();
  expect(await timed(codeOf(vault.unlock(another)))).toBeLessThan(400);
  expect(await timed(codeOf(vault.unlock(another)))).toBeLessThan(400);
  const begun = performance.now();
  const codes = await Promise.all([codeOf(vault.unlock(another)), codeOf(vault.unlock(another)), codeOf(vault.unlock(another))]);
  expect(codes).toEqual(Array(3).fill('passphrase-wrong'));
  // The third is looked at at once, the fourth half a second after it, the fifth a second after that.
  expect(performance.now() - begun).toBeGreaterThan(500 + 1000 - 10);
  expect(vault.waitMilliseconds()).toBeGreaterThan(1_500);
  expect(await timed(vault.unlock(passphrase))).toBeGreaterThan(1_500);
  expect(vault.state()).toBe('open');
  // Opened, the count begins anew.
  vault.lock();
  expect(await timed(vault.unlock(passphrase))).toBeLessThan(400);
});

test('[VLT-7] the fault says how long the next try waits', async () => {
  const { vault } = await locked();
  for (let index = 0; index < 3; index++) await codeOf(vault.unlock(another));
  expect((await faultOf(vault.unlock(another))).message).toBe('The next try is looked at in a second.');
});

test('[VLT-7] a restart keeps count and pause; a clock that was set back leaves the whole pause to wait', async () => {
  const { folder, vault } = await locked();
  for (let index = 0; index < 3; index++) await codeOf(vault.unlock(another));
  await vault.close();
  tamper(folder, 'update vault set wrong_tries = 8, pause_ms = 20000, not_before_ms = ?', Date.parse('2026-06-15T12:00:20Z'));
  const at = (time: string) => () => new Date(time);
  for (const [time, wait] of [
    ['2026-06-15T12:00:00Z', 20_000],
    ['2026-06-15T12:00:15Z', 5_000],
    ['2020-01-01T00:00:00Z', 20_000],
    ['2026-06-15T12:00:21Z', 0],
  ] as const) {
    const again = await open(folder, undefined, at(time));
    expect(again.waitMilliseconds(), time).toBeLessThanOrEqual(wait);
    expect(again.waitMilliseconds(), time).toBeGreaterThanOrEqual(Math.max(wait - 500, 0));
    await again.close();
  }
  const last = await open(folder, undefined, at('2026-06-15T12:00:21Z'));
  expect(await codeOf(last.unlock(another))).toBe('passphrase-wrong');
  // Nine wrong ones: half a second doubled six times is more than the longest pause.
  expect(last.waitMilliseconds()).toBeGreaterThan(29_000);
});

test('[VLT-7] a try counts before it is worked out: ending the program in its middle does not make it free', async () => {
  const folder = newFolder();
  const vault = await open(folder, { n: 2 ** 17, r: 8, p: 1 });
  await vault.changePassphrase(undefined, passphrase);
  await vault.close();
  const child = spawn(process.execPath, [program, folder, 'try', another], { stdio: ['ignore', 'pipe', 'inherit'] });
  let told = '';
  await new Promise<void>(done => {
    child.stdout.on('data', chunk => {
      told += chunk;
      // Deriving the key takes a few tenths of a second.
      if (told.includes('trying')) setTimeout(() => child.kill('SIGKILL'), 80);
    });
    child.once('exit', () => done());
  });
  expect(told).not.toContain('passphrase-wrong');
  expect(peek(folder, 'select wrong_tries from vault')).toEqual([{ wrong_tries: 1 }]);
});

test('[VLT-7] only a few tries wait at a time; closing does not wait for their pauses', async () => {
  const { folder, vault } = await locked();
  const tries = Array.from({ length: 20 }, () => codeOf(vault.unlock(another)));
  const begun = performance.now();
  await new Promise(done => setTimeout(done, 300));
  await vault.close();
  expect(performance.now() - begun).toBeLessThan(3_000);
  const codes = await Promise.all(tries);
  expect(codes.filter(code => code === 'passphrase-tries-waiting')).toHaveLength(12);
  expect(codes).toContain('clients-locked');
  expect((peek(folder, 'select wrong_tries as wrong from vault')[0] as { wrong: number }).wrong).toBeLessThan(8);
});
