import { spawn, spawnSync } from 'node:child_process';
import { existsSync, globSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findBrowser } from './findBrowser.ts';
import { pdfPrinter } from './printPdf.ts';

const program = fileURLToPath(new URL('printPdf.fixture.ts', import.meta.url));
const marker = 'Persephone Quillfeather 7.31';
const html = `<!doctype html><html lang="en"><head><title>Page</title></head><body><h1>${marker}</h1><p>${'A line. '.repeat(10_000)}</p></body></html>`;

/** A program of its own that prints, so that it can be watched and ended. `temporary` is its folder for temporary files. */
const printing = (temporary: string, times: string, ...more: readonly string[]) =>
  spawn(process.execPath, [program, times, html, ...more], {
    env: { ...process.env, TMPDIR: temporary },
    stdio: ['ignore', 'pipe', 'inherit'],
  });

async function resultsOf({ stdout }: ReturnType<typeof printing>): Promise<readonly unknown[]> {
  let text = '';
  for await (const chunk of stdout) text += chunk;
  return JSON.parse(text) as unknown[];
}

/** Each browser has a folder of its own there, from before it begins until after it has ended. */
const browsersIn = (folder: string): number => readdirSync(folder).length;
const processesIn = (folder: string): string[] =>
  readdirSync('/proc')
    .filter(name => /^\d+$/.test(name))
    .map(pid => textOf(`/proc/${pid}/cmdline`).toString())
    .filter(line => line.includes(`--user-data-dir=${folder}`) || line.includes(`--user-data-dir\0${folder}`));

function textOf(path: string): Buffer {
  try {
    return statSync(path).isFile() ? readFileSync(path) : Buffer.alloc(0);
  } catch {
    return Buffer.alloc(0);
  }
}

/** Every file below a folder, and every file on a disk that a browser of that folder holds open, deleted or not. */
function filesOf(folder: string): Buffer[] {
  const open = globSync('/proc/[0-9]*/fd/*').filter(path => {
    try {
      const target = readlinkSync(path);
      return target.startsWith(folder) || /^\/(tmp|var)\/.*(deleted)/.test(target);
    } catch {
      return false;
    }
  });
  return [...globSync(`${folder}/**/*`), ...open].map(textOf);
}

const isLinux = process.platform === 'linux';
describe.skipIf(findBrowser() === undefined || !isLinux)('printing (skipped without a Chromium-family browser or Linux)', () => {
  let temporary: string;
  beforeAll(() => {
    temporary = mkdtempSync(join(tmpdir(), 'platewright-test-'));
  });
  afterAll(() => rmSync(temporary, { recursive: true, force: true }));

  test('[SRV-44] no file holds anything of the page, while it is printed or after', { timeout: 120_000 }, async () => {
    const child = printing(temporary, '1');
    const lengths = resultsOf(child);
    let looks = 0;
    let most = 0;
    while (child.exitCode === null) {
      most = Math.max(most, browsersIn(temporary));
      for (const file of filesOf(temporary))
        for (const form of ['utf8', 'utf16le'] as const) expect(file.includes(Buffer.from(marker, form))).toBe(false);
      looks += 1;
      await setTimeout(5);
    }
    expect(await lengths).toEqual([expect.toSatisfy((length: number) => length > 10_000)]);
    expect([looks > 5, most]).toEqual([true, 1]);
    expect(readdirSync(temporary)).toEqual([]);
  });

  test('[SRV-44] a page reaches no network, not even a server of this machine', { timeout: 120_000 }, async () => {
    const asked: (string | undefined)[] = [];
    const server = createServer(({ url }, answer) => {
      asked.push(url);
      answer.end();
    });
    await new Promise<void>(ready => server.listen(0, '127.0.0.1', ready));
    const { port } = server.address() as AddressInfo;
    const places = [`http://127.0.0.1:${port}`, `http://localhost:${port}`];
    const reaching = places
      .map(at => `<link rel="stylesheet" href="${at}/style.css"><img src="${at}/picture.png" alt=""><iframe src="${at}/page"></iframe>`)
      .join('');
    const pdf = await pdfPrinter()(html.replace('<h1>', `${reaching}<h1>`));
    await new Promise(closed => server.close(closed));
    expect(asked).toEqual([]);
    expect(pdf.length).toBeGreaterThan(10_000);
  });

  test('[SRV-45] two browsers at most; the others wait in turn, and one that nobody waits for is ended', { timeout: 120_000 }, async () => {
    const child = printing(temporary, '6', 'at once');
    const results = resultsOf(child);
    let most = 0;
    while (child.exitCode === null) {
      most = Math.max(most, browsersIn(temporary));
      await setTimeout(5);
    }
    const [first, second, ...wanted] = await results;
    expect([first, second]).toEqual(['work-cancelled', 'work-cancelled']);
    expect([wanted.length, new Set(wanted).size, typeof wanted[0]]).toEqual([4, 1, 'number']);
    expect(most).toBe(2);
    expect(readdirSync(temporary)).toEqual([]);
  });

  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    '[SRV-46] %s ends the browser and removes its profile',
    { timeout: 60_000 },
    async signal => {
      const child = printing(temporary, '50');
      while (processesIn(temporary).length === 0) await setTimeout(10);
      const ended = new Promise(done => child.once('exit', done));
      child.kill(signal);
      await ended;
      // A process that was killed may be listed for a moment.
      for (let wait = 0; processesIn(temporary).length > 0 && wait < 100; wait++) await setTimeout(20);
      expect([processesIn(temporary), readdirSync(temporary)]).toEqual([[], []]);
    },
  );

  test('[SRV-46] what a killed program left is swept by the next one, what belongs to a running one is not', {
    timeout: 60_000,
  }, async () => {
    const child = printing(temporary, '50');
    while (processesIn(temporary).length === 0) await setTimeout(10);
    const ended = new Promise(done => child.once('exit', done));
    child.kill('SIGKILL');
    await ended;
    // The browser ends by itself when its pipe does.
    for (let wait = 0; processesIn(temporary).length > 0 && wait < 250; wait++) await setTimeout(20);
    expect(processesIn(temporary)).toEqual([]);
    const left = readdirSync(temporary);
    expect(left).toEqual([expect.stringMatching(`^platewright-pdf-${child.pid}-`)]);
    const others = [`platewright-pdf-${process.pid}-abcdef`, 'platewright-pdf-else', 'another-999999999-abcdef'];
    for (const name of others) mkdirSync(join(temporary, name));
    expect(spawnSync(process.execPath, [program, '0', ''], { env: { ...process.env, TMPDIR: temporary } }).status).toBe(0);
    expect(readdirSync(temporary).sort()).toEqual([...others].sort());
    for (const name of others) rmSync(join(temporary, name), { recursive: true });
    expect(existsSync(join(temporary, left[0]!))).toBe(false);
  });
});

test('[SRV-46] a program that is no browser is told, and nothing is left', async () => {
  await expect(pdfPrinter({ PLATEWRIGHT_BROWSER: process.execPath })(html)).rejects.toMatchObject({ code: 'pdf-not-made' });
  expect(readdirSync(tmpdir()).filter(name => name.startsWith(`platewright-pdf-${process.pid}-`))).toEqual([]);
});
