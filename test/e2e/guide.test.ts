import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readPdf } from '../pdf.ts';
import { program } from '../program.ts';
import { browserPath, launchBrowser, removeFolder, violationsOf } from './workbench.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const pages = ['index.html', 'guides/sandwich-slices.html', 'guides/sandwich-slices.large-print.html'];

// The demo guide, built by the real program and opened from disk in a real Chromium.
describe.skipIf(browserPath === undefined)('a guide in a browser (skipped where no Chromium-family browser is installed)', () => {
  let folder: string;
  let build: readonly string[];
  let browser: Browser;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'platewright-guide-'));
    const guide = join(root, 'data/demo/guides/sandwich-slices.json');
    const options = [
      '--labels',
      join(root, 'data/demo/labels.csv'),
      '--plates',
      join(root, 'data/demo/plates'),
      '--today',
      '2026-11-15',
      '--pdf',
    ];
    build = [program, 'guide', 'build', guide, ...options];
    const { status, stderr } = spawnSync(process.execPath, [...build, '--out', join(folder, 'site')], {
      encoding: 'utf8',
      env: { ...process.env, PLATEWRIGHT_BROWSER: browserPath! },
    });
    expect({ status, stderr }).toMatchObject({ status: 0 });
    browser = await launchBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    removeFolder(folder);
  });
  const open = async (path: string, width: number) => {
    const page = await (await browser.newContext({ viewport: { width, height: 800 } })).newPage();
    const complaints: string[] = [];
    page.on('console', message => message.type() === 'error' && complaints.push(message.text()));
    page.on('request', request => request.url().startsWith('file:') || complaints.push(request.url()));
    await page.goto(pathToFileURL(join(folder, 'site', path)).href);
    return { page, complaints };
  };

  test.each(pages)('[GDE-15] %s: axe finds nothing (WCAG 2.2 A and AA), nothing is loaded from anywhere', async path => {
    const { page, complaints } = await open(path, 1280);
    expect(await violationsOf(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test.each(pages)('[GDE-15] %s: nothing runs out of a screen of 320 px (WCAG 2.2 SC 1.4.10)', async path => {
    const { page } = await open(path, 320);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    const wide = `[...document.querySelectorAll('body *')].filter(one => one.getBoundingClientRect().right > 321).map(one => one.outerHTML.slice(0, 80))`;
    expect(await page.evaluate(wide)).toEqual([]);
  });

  test('[GDE-22] on paper everything is black on white, and a verdict stays a word', async () => {
    const { page } = await open(pages[1]!, 800);
    await page.emulateMedia({ media: 'print' });
    const colors = `[...new Set([...document.querySelectorAll('.guide, .guide *')].flatMap(one => { const { color, backgroundColor } = getComputedStyle(one); return [color, backgroundColor]; }))]`;
    expect(new Set((await page.evaluate(colors)) as string[])).toEqual(new Set(['rgb(0, 0, 0)', 'rgb(255, 255, 255)', 'rgba(0, 0, 0, 0)']));
    expect(await page.getByText(/^\s*Fits; 20 mg to spare/).count()).toBeGreaterThan(0);
  });

  test('[GDE-21] PDFs in A4 and Letter, plain and large, are tagged, in their language and of their size', async () => {
    // A4 is 210 × 297 mm (ISO 216), Letter 8.5 × 11 inches, in points of 1/72 inch.
    const sizes: Record<string, readonly number[]> = { a4: [595, 842], letter: [612, 792] };
    for (const [paper, size] of Object.entries(sizes))
      for (const dress of ['', 'large-print.']) {
        const pdf = await readPdf(readFileSync(join(folder, `site/guides/sandwich-slices.${dress}${paper}.pdf`)));
        expect(pdf).toMatchObject({ language: 'en', isMarked: true });
        expect(pdf.pages.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual(pdf.pages.map(() => size));
        for (const tag of ['H1', 'H2', 'H3', 'Table', 'TH', 'TD', 'L', 'LI', 'P', 'Figure', 'Link'])
          expect([...pdf.tags.keys()]).toContain(tag);
        expect(pdf.pages.map(({ text }) => text).join(' ')).toContain('Turkey breast, no salt added');
        // No sheet is blank.
        for (const { text } of pdf.pages) expect(text.length).toBeGreaterThan(40);
      }
  });

  test.skipIf(process.platform !== 'linux')(
    '[SRV-46] Ctrl-C while it prints leaves nothing half made, and the last build (skipped where there is no Linux)',
    { timeout: 60_000 },
    async () => {
      const temporary = mkdtempSync(join(tmpdir(), 'platewright-guide-'));
      const before = readdirSync(folder).sort();
      const child = spawn(process.execPath, [...build, '--out', join(folder, 'site')], {
        env: { ...process.env, PLATEWRIGHT_BROWSER: browserPath!, TMPDIR: temporary },
        stdio: 'ignore',
      });
      const ended = new Promise(done => child.once('exit', done));
      while (readdirSync(temporary).length === 0) await setTimeout(10);
      child.kill('SIGINT');
      expect(await ended).toBe(130);
      expect([readdirSync(temporary), readdirSync(folder).sort()]).toEqual([[], before]);
      removeFolder(temporary);
    },
  );
});
