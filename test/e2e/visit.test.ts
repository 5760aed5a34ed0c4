import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, launchBrowser, quiet, removeFolder, startWorkbench, type Workbench } from './workbench.ts';

// A visit of a client of the demo by keyboard alone: five results, what changed, signed, note, handout. Every key and every text typed in one go is one action.
describe.skipIf(browserPath === undefined)('a visit by keyboard (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let actions = 0;

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
    await workbench.letIn(page.context());
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });

  const press = async (key: string, times = 1): Promise<void> => {
    for (let at = 0; at < times; at++) await page.keyboard.press(key);
    actions += times;
  };
  const type = async (words: string): Promise<void> => {
    await page.keyboard.type(words);
    actions++;
  };
  /** By the palette: open it, type what is wanted, take it. */
  const find = async (words: string): Promise<void> => {
    await press('Control+K');
    await type(words);
    await press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  };
  const focused = () => page.evaluate('document.activeElement?.closest("label, div")?.textContent ?? ""');

  test('[CLT-76] from the list of clients to the handout in at most 60 actions', { timeout: 120_000 }, async () => {
    await page.goto(`${workbench.address}/clients`);
    await page.getByRole('link', { name: 'L. O. (demo)' }).waitFor();
    await quiet(page);
    for (let at = 0; at < 20 && !String(await page.evaluate('document.activeElement.textContent')).startsWith('L. O. (demo)'); at++)
      await press('Tab');
    await press('Enter');
    await page.getByRole('heading', { level: 1, name: 'L. O. (demo)' }).waitFor();
    await page.getByText('No prescription is signed yet.').waitFor();

    await find('add res');
    await page.getByRole('heading', { name: 'Add results' }).waitFor();
    // The first row has the focus on its result, potassium.
    await press('Tab');
    await type('5.2');
    for (const [name, value] of [
      ['phosphate', '6.4'],
      ['albumin', '3.7'],
      ['bicarbonate', '21'],
      ['calcium, tot', '9.0'],
    ] as const) {
      await press('Alt+r');
      await expect.poll(focused).toContain('Result');
      await type(name);
      await press('Tab');
      await type(value);
    }
    await press('Control+s');
    for (const shown of [
      'Potassium 5.2 mmol/L',
      'Phosphorus 6.4 mg/dL',
      'Albumin 3.7 g/dL',
      'Bicarbonate 21 mmol/L',
      'Calcium, total 9 mg/dL',
    ])
      await page.locator('summary', { hasText: shown }).waitFor();

    await find('sign');
    // The name is asked for first, then the one figure of fluid that nobody but the dietitian picks.
    await type('A. Dietitian');
    await press('Tab');
    await type('RDN');
    await press('Enter');
    await page.getByText(/Not signed yet/).waitFor();
    await expect.poll(focused).toContain('One figure');
    await type('1000');
    await find('sign');
    await page.getByText(/^signed .*A\. Dietitian, RDN$/).waitFor();

    await find('write a note');
    await page.getByRole('button', { name: 'Keep the note' }).waitFor();
    await press('Control+s');
    await page.getByRole('button', { name: 'Keep the note' }).waitFor({ state: 'detached' });

    await find('make the handout');
    await page.getByLabel('Author').waitFor();
    expect(await page.getByLabel('Author').inputValue()).toBe('A. Dietitian');
    expect(actions).toBeLessThanOrEqual(60);
  });
});
