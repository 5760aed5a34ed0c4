import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, type Workbench } from './workbench.ts';

const foods = 150;

// More foods than a table draws at once, in a real browser.
describe.skipIf(browserPath === undefined)('a long table in a browser (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    workbench = await startWorkbench();
    for (let at = 1; at <= foods; at += 1) {
      const answer = await workbench.fetch('/api/foods', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ label: { name: `Slice ${at}`, category: 'many slices', panel: { energyKcal: 100, sodiumMg: 5 * at } } }),
      });
      expect(answer.ok).toBe(true);
    }
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    complaints = complaintsOf(page);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });
  const survey = () => page.getByRole('table', { name: 'Foods of the survey' });
  const rowsDrawn = () => survey().locator('tbody tr[data-index]').count();

  test('[WEB-5] on paper every food stands in the table; on the screen those in view', async () => {
    await page.goto(`${workbench.address}/?category=many+slices`);
    await page.getByRole('heading', { name: `${foods} foods` }).waitFor();
    await expect.poll(rowsDrawn).toBeGreaterThan(5);
    expect(await rowsDrawn()).toBeLessThan(80);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(rowsDrawn).toBe(foods);
    expect(await survey().getByRole('columnheader').allTextContents()).toEqual(['Food', 'Energy', 'Sodium', 'Additives named', 'Verdict']);
    await page.emulateMedia({ media: 'screen' });
    await expect.poll(rowsDrawn).toBeLessThan(80);
  });

  test('[WEB-29] what fits is asked for when rows come into view, one time a block', async () => {
    const asked: string[][] = [];
    page.on('request', request => {
      if (request.url().endsWith('/api/survey/foods')) asked.push(request.postDataJSON().foodIds);
    });
    await page.goto(`${workbench.address}/?category=many+slices`);
    await expect.poll(() => asked.length, { timeout: 10_000 }).toBeGreaterThan(0);
    const before = asked.length;
    await page.getByRole('region', { name: 'Foods of the survey' }).hover();
    await page.mouse.wheel(0, 5_000);
    await expect.poll(() => asked.length, { timeout: 10_000 }).toBeGreaterThan(before);
    await page.mouse.wheel(0, -9_000);
    await survey().locator('[aria-rowindex="2"]').waitFor();
    // A block that is asked for again would be so within this time.
    await page.waitForTimeout(500);
    const ids = asked.flat();
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length % 25).toBe(0);
  });

  test('the list of foods holds all of them, and a heading sorts it', async () => {
    await page.goto(`${workbench.address}/foods?category=many+slices`);
    const list = page.getByRole('table', { name: 'Foods with their standing label' });
    await list.getByRole('link', { name: 'Slice 1', exact: true }).waitFor();
    expect(await list.getAttribute('aria-rowcount')).toBe(String(foods + 1));
    await list.getByRole('button', { name: 'Sodium' }).click();
    await list.getByRole('button', { name: 'Sodium ↑' }).click();
    await list.getByRole('link', { name: 'Slice 150' }).waitFor();
  });

  test('the page had nothing to complain about', () => {
    expect(complaints).toEqual([]);
  });
});
