import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readPdf } from '../pdf.ts';
import {
  browserPath,
  complaintsOf,
  launchBrowser,
  removeFolder,
  savedBy,
  startWorkbench,
  violationsOf,
  type Workbench,
} from './workbench.ts';

// What a person does: a survey becomes a guide, is looked at, published, and saved as PDF.
describe.skipIf(browserPath === undefined)('guides in a browser (skipped where no Chromium-family browser is installed)', () => {
  let bench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[];
  beforeAll(async () => {
    bench = await startWorkbench(undefined, { PLATEWRIGHT_BROWSER: browserPath! });
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await bench.letIn(page.context());
    complaints = complaintsOf(page);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await bench?.stop();
    if (bench !== undefined) removeFolder(bench.folder);
  });
  const saved = (press: () => Promise<void>) => savedBy(page, press);
  const published = () => page.frameLocator('iframe').locator('body');

  test('from a survey to a guide: its sentence is taken over, its page appears beside the form', { timeout: 60_000 }, async () => {
    await page.goto(`${bench.address}/?category=cold+cereals`);
    await page.getByRole('link', { name: 'Make a guide of it' }).click();
    await page.getByLabel('Title, as readers will see it').fill('Cereals for a low sodium breakfast');
    await page.getByLabel('Author').fill('Ottoline Farrowby');
    await page.getByLabel('Credentials').fill('MS, RDN');
    await page.getByRole('button', { name: 'Begin the guide', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Cereals for a low sodium breakfast' }).waitFor();
    expect(await page.getByLabel('Category').inputValue()).toBe('cold cereals');
    await published().getByRole('heading', { level: 1, name: 'Cereals for a low sodium breakfast' }).waitFor();
    expect(String(await published().textContent())).toMatch(/foods judged: \d+ fit/);
    expect(await violationsOf(page)).toEqual([]);
  });

  test('[GDE-25] what is typed is saved by itself and is in the page; what is missing is told', { timeout: 60_000 }, async () => {
    await page.getByLabel('Purpose').fill('Cereals that start the day with little <b>salt</b>.');
    await published().getByText('Cereals that start the day with little <b>salt</b>.').waitFor();
    await page.getByText('Saved', { exact: true }).waitFor();
    await page.reload();
    expect(await page.getByLabel('Purpose').inputValue()).toBe('Cereals that start the day with little <b>salt</b>.');
    await page.getByLabel('Author').fill('');
    await page
      .getByText(/Needed: .*text/)
      .first()
      .waitFor();
    expect(await page.getByRole('button', { name: 'Publish', exact: true }).isDisabled()).toBe(true);
    await page.getByLabel('Author').fill('Ottoline Farrowby');
    await published().getByText('By Ottoline Farrowby').waitFor();
  });

  test('[WEB-4] what could not be saved is back after a reload, and is then saved', { timeout: 60_000 }, async () => {
    await page.route('**/api/guides/*', route => (route.request().method() === 'PUT' ? route.abort() : route.continue()));
    await page.getByLabel('Purpose').fill('Cereals for an unlucky day.');
    await page.getByText('The program does not answer').waitFor();
    // A failed request is a complaint of the browser, not of the page.
    await page.waitForFunction(`localStorage.length === 1`);
    await page.unroute('**/api/guides/*');
    await page.reload();
    await published().getByText('Cereals for an unlucky day.').waitFor();
    expect(await page.getByLabel('Purpose').inputValue()).toBe('Cereals for an unlucky day.');
    await page.getByText('Saved', { exact: true }).waitFor();
    await page.waitForFunction('localStorage.length === 0');
  });

  test('a food is told where to buy and how to measure, gets a picture, or is left out with its reason', { timeout: 60_000 }, async () => {
    const first = page.getByRole('button', { name: /fits$/ }).first();
    const name = String(await first.locator('b').textContent());
    await first.click();
    await page.getByLabel('How to measure the portion').fill('Level the cup with a knife.');
    await page.getByRole('button', { name: 'Add a place to buy' }).click();
    // What is not whole yet is told beside it, and the food stays open.
    await page.getByLabel('Price', { exact: true }).fill('3.20');
    await page.getByText('Needed: text.').waitFor();
    await page.getByRole('textbox', { name: 'Shop', exact: true }).fill('Pennyfold Pantry');
    await page.getByLabel('Web address').fill('javascript:alert(1)');
    await page.getByText('an address that begins with http:// or https://', { exact: false }).first().waitFor();
    await page.getByLabel('Web address').fill('https://pennyfold.example/cereal');
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByText('Choose a picture of your own').click()]);
    const draw = `(() => {
      const canvas = document.createElement('canvas');
      canvas.width = 900;
      canvas.height = 600;
      canvas.getContext('2d').fillRect(100, 100, 300, 300);
      return canvas.toDataURL('image/png').split(',')[1];
    })()`;
    const png = (await page.evaluate(draw)) as string;
    await chooser.setFiles({ name: 'box.png', mimeType: 'image/png', buffer: Buffer.from(png, 'base64') });
    await published()
      .getByRole('img', { name: `The package of ${name}` })
      .waitFor();
    await published().getByText('Level the cup with a knife.').waitFor();
    // A link without a word on what the author gets is told, near the disclosures (16 CFR 255.5).
    await page.getByText('what the author gets for them', { exact: false }).first().waitFor();
    await page.getByRole('button', { name: 'Add a disclosure' }).click();
    await page.getByLabel('Kind').selectOption('none');
    await page.getByLabel('In your words').fill('Nobody pays me.');
    await published().getByText('Nobody pays me.').waitFor();
    expect(await violationsOf(page)).toEqual([]);
    const before = /(\d+) fit/.exec(String(await published().textContent()))![1];
    await page.getByLabel('Leave this food out').check();
    await page.getByLabel(/^Why it is left out/).fill('no longer sold');
    await published().getByText('1: no longer sold.').waitFor();
    expect(/(\d+) fit/.exec(String(await published().textContent()))![1]).toBe(String(Number(before) - 1));
  });

  test('[GDE-21] on paper, for a screen reader, published, and saved as a tagged PDF', { timeout: 90_000 }, async () => {
    await page.getByLabel('On paper').check();
    await page.getByRole('img', { name: /^Sheet 1 of \d/ }).waitFor({ timeout: 30_000 });
    await page.getByLabel('For a screen reader').check();
    const lines = page.getByRole('region', { name: 'As readers will have it' }).getByRole('listitem');
    await lines.first().waitFor();
    expect(await lines.allInnerTexts()).toEqual(expect.arrayContaining(['heading 1 Cereals for a low sodium breakfast']));
    await page.getByRole('button', { name: 'Publish', exact: true }).click();
    await page.getByText('Published. Save its files below').waitFor();
    const pdf = await readPdf(await saved(() => page.getByRole('button', { name: 'PDF, Letter', exact: true }).click()));
    expect(pdf).toMatchObject({ language: 'en', isMarked: true });
    expect(pdf.pages.every(({ width, height }) => Math.round(width) === 612 && Math.round(height) === 792)).toBe(true);
    expect(pdf.pages.map(({ text }) => text).join('\n')).toContain('Cereals for a low sodium breakfast');
    for (const tag of ['H1', 'H2', 'Table', 'TH', 'TD', 'L', 'LI', 'P']) expect([tag, (pdf.tags.get(tag) ?? 0) > 0]).toEqual([tag, true]);
    const html = Buffer.from(await saved(() => page.getByRole('button', { name: 'Page (HTML)' }).click())).toString();
    expect(html).toContain('Nobody pays me.');
  });

  test('[GDE-24] the site of published guides comes as one ZIP file; a guide is removed and put back', { timeout: 60_000 }, async () => {
    await page.getByRole('link', { name: 'All guides' }).click();
    await page.getByRole('link', { name: 'Cereals for a low sodium breakfast' }).waitFor();
    expect(await violationsOf(page)).toEqual([]);
    const zip = unzipSync(await saved(() => page.getByRole('button', { name: 'Save the site' }).click()));
    expect(Object.keys(zip).filter(name => name.endsWith('.large-print.html'))).toHaveLength(2);
    await page.getByRole('button', { name: 'Remove the guide Cereals for a low sodium breakfast' }).click();
    await page.getByText('Removed: Cereals for a low sodium breakfast.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    const card = page.getByRole('article').filter({ hasText: 'Cereals for a low sodium breakfast' });
    await card.getByText(/; published /).waitFor();
  });

  test('[GDE-26] the screens fit a phone, and nothing complained of the policy or failed', { timeout: 60_000 }, async () => {
    await page.setViewportSize({ width: 320, height: 800 });
    await page.getByRole('link', { name: 'Cereals for a low sodium breakfast' }).click();
    await published().getByRole('heading', { level: 1 }).waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    expect(complaints.filter(one => !one.includes('net::ERR_FAILED'))).toEqual([]);
  });
});
