import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { program } from '../program.ts';
import { browserPath, launchBrowser, removeFolder, violationsOf } from './workbench.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const ids = readdirSync(join(root, 'data/demo/handouts')).map(name => name.replace(/\.json$/, ''));
const pages = ['index.html', ...ids.flatMap(id => [`${id}.html`, `${id}.large-print.html`])];

/** What is inside the margins of the page (14 mm at the sides and above, 16 mm below) in CSS px, 96 to the inch. */
const papers = { a4: [210, 297], letter: [215.9, 279.4] } as const;
const px = (mm: number): number => (mm / 25.4) * 96;

// The demo's handouts, built by the real program and opened from disk in a real Chromium.
describe.skipIf(browserPath === undefined)('handouts in a browser (skipped where no Chromium-family browser is installed)', () => {
  let folder: string;
  let browser: Browser;
  /** The same for all: they hold no script and keep nothing, and a page takes longer to begin than to be shown. */
  let page: Page;
  const complaints: string[] = [];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'platewright-handout-'));
    const args = [join(root, 'data/demo/buildHandouts.ts'), join(folder, 'site'), '--pdf'];
    const env = { ...process.env, PLATEWRIGHT_BROWSER: browserPath! };
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', env });
    expect({ status, stderr }).toMatchObject({ status: 0 });
    browser = await launchBrowser();
    page = await (await browser.newContext()).newPage();
    page.on('console', message => message.type() === 'error' && complaints.push(message.text()));
    page.on('request', request => request.url().startsWith('file:') || complaints.push(request.url()));
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    removeFolder(folder);
  });
  const open = async (path: string, width: number, height = 800, media: 'screen' | 'print' = 'screen') => {
    await page.setViewportSize({ width: Math.floor(width), height: Math.floor(height) });
    await page.emulateMedia({ media });
    complaints.length = 0;
    await page.goto(pathToFileURL(join(folder, 'site', path)).href);
  };

  test.each(pages)('[HND-15] %s: axe finds nothing (WCAG 2.2 A and AA), nothing is loaded from anywhere', async path => {
    await open(path, 1280);
    expect(await violationsOf(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test.each(pages)('[HND-15] %s: nothing runs out of a screen of 320 px (WCAG 2.2 SC 1.4.10)', async path => {
    await open(path, 320);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    const wide = `[...document.querySelectorAll('body *')].filter(one => one.getBoundingClientRect().right > 321).map(one => one.outerHTML.slice(0, 80))`;
    expect(await page.evaluate(wide)).toEqual([]);
  });

  /** Where the fridge page ends on each paper in each dress, and the size of its type. */
  const expectOnePage = async (id: string) => {
    for (const [paper, [width, height]] of Object.entries(papers))
      for (const dress of ['html', 'large-print.html']) {
        await open(`${id}.${dress}`, px(width - 28), px(height - 30), 'print');
        const measured = `(() => { const fridge = document.querySelector('.fridge'); const { fontSize, breakAfter } = getComputedStyle(fridge); return { bottom: fridge.getBoundingClientRect().bottom, size: parseFloat(fontSize), breakAfter }; })()`;
        const { bottom, size, breakAfter } = (await page.evaluate(measured)) as { bottom: number; size: number; breakAfter: string };
        expect({ id, paper, dress, bottom, fits: bottom <= px(height - 30) }).toMatchObject({ fits: true });
        expect({ breakAfter, isBig: size > (14 / 72) * 96 - 0.01 }).toEqual({ breakAfter: 'page', isBig: true });
      }
  };

  test.each(ids)(
    '[HND-8] %s: the fridge page is one page of A4 and of Letter, plain and in large print, in type of 14 pt or more',
    expectOnePage,
  );

  test.each(['en', 'es'])(
    '[HND-8] the fullest fridge page (%s) is still one: three nutrients, longest title and call line, avoided foods',
    async language => {
      const json = JSON.parse(readFileSync(join(root, 'data/demo/handouts/hemodialysis-no-phosphate.json'), 'utf8'));
      const of = (item: string, hi: number) => ({ item, unit: 'mg', range: { lo: 0, hi }, limit: 'at-most' });
      const named = (item: string) => ({ item, unit: 'named on the label', range: { lo: 0, hi: 0 } });
      const others = json.prescription.targets.filter(({ item }: { item: string }) => /^(sodium|protein|fluid)$/.test(item));
      const targets = [...others, of('potassium', 2500), of('phosphorus', 1000), named('phosphateAdditives'), named('potassiumAdditives')];
      const full = {
        ...{ ...json, id: `full-${language}`, language, prescription: { ...json.prescription, targets } },
        title: 'What to eat and to leave while potassium and phosphorus in your blood are both too high'.padEnd(90, '.'),
        callUs: 'Kidney clinic at the old mill, Monday to Friday from 8 to 5: 555-0142, ext. 3300'.slice(0, 80),
        avoidedFoods: ['garlic', 'peanuts', 'shellfish', 'sesame'],
      };
      writeFileSync(join(folder, 'full.json'), JSON.stringify(full));
      const options = ['--labels', join(root, 'data/demo/labels.csv'), '--plates', join(root, 'data/demo/plates'), '--today', '2026-11-15'];
      const args = [program, 'handout', 'build', join(folder, 'full.json'), ...options, '--out', join(folder, 'full')];
      expect(spawnSync(process.execPath, args, { encoding: 'utf8' })).toMatchObject({ status: 0 });
      await expectOnePage(`../full/full-${language}`);
    },
  );

  test('[HND-17] on paper everything is black on white, and the boxes to check are drawn', async () => {
    await open(`${ids[0]}.html`, 800, 800, 'print');
    const colors = `[...new Set([...document.querySelectorAll('.guide, .guide *')].flatMap(one => { const { color, backgroundColor } = getComputedStyle(one); return [color, backgroundColor]; }))]`;
    expect(new Set((await page.evaluate(colors)) as string[])).toEqual(new Set(['rgb(0, 0, 0)', 'rgb(255, 255, 255)', 'rgba(0, 0, 0, 0)']));
    const box = `(() => { const { borderTopStyle, width } = getComputedStyle(document.querySelector('.boxes li'), '::before'); return { borderTopStyle, wide: parseFloat(width) > 8 }; })()`;
    expect(await page.evaluate(box)).toEqual({ borderTopStyle: 'solid', wide: true });
  });

  test('[HND-8] PDFs in A4 and Letter, plain and large, are tagged, in their language and of their size', () => {
    // A4 is 210 × 297 mm, 595 × 842 points (ISO 216); Letter is 612 × 792.
    const sizes: Record<string, RegExp> = { a4: /\/MediaBox \[0 0 59[45]\S* 84[12]\S*\]/, letter: /\/MediaBox \[0 0 612\S* 792\S*\]/ };
    for (const id of ids)
      for (const [paper, size] of Object.entries(sizes))
        for (const dress of ['', 'large-print.']) {
          const pdf = readFileSync(join(folder, `site/${id}.${dress}${paper}.pdf`), 'latin1');
          expect(pdf).toMatch(/^%PDF/);
          expect(pdf).toMatch(/\/MarkInfo\s*<<[^>]*\/Marked true/);
          expect(pdf).toMatch(id.endsWith('-es') ? /\/Lang \(es-US\)/ : /\/Lang \(en\)/);
          expect(pdf).toMatch(size);
        }
  });
});
