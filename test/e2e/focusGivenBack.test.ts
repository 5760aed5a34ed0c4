import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, launchBrowser, removeFolder, startWorkbench, type Workbench } from './workbench.ts';

// Who works by keyboard alone adds, changes, removes and brings back a plate, and is never thrown out of the screen.
describe.skipIf(browserPath === undefined)('the place of the focus (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    const context = await browser.newContext();
    await workbench.letIn(context);
    page = await context.newPage();
    await page.goto(`${workbench.address}/plates`);
    await page.getByRole('heading', { name: 'Six unsalted crackers' }).waitFor();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });

  const focused = (): Promise<string> =>
    page.evaluate("document.activeElement.getAttribute('aria-label') ?? document.activeElement.id") as Promise<string>;
  const change = () => page.getByRole('button', { name: 'Change the plate one slice of teff bread' });

  test('after a form that was opened by its shortcut is saved, it is in the screen', async () => {
    await page.keyboard.press('Alt+N');
    await page.getByRole('textbox', { name: 'As it reads in a sentence' }).fill('one slice of teff bread');
    await page.keyboard.press('Control+S');
    await change().waitFor();
    await expect.poll(focused).toBe('screen');
  });

  test('after a form that was opened by a button is closed, it is on that button', async () => {
    await change().press('Enter');
    await page.getByRole('heading', { name: 'Change this plate' }).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).press('Enter');
    await expect.poll(focused).toBe('Change the plate one slice of teff bread');
  });

  test('after a plate is removed and brought back, it is where it was before', async () => {
    await page.getByRole('button', { name: 'Change the plate six unsalted crackers' }).focus();
    await page.getByRole('button', { name: 'Remove the plate one slice of teff bread' }).press('Enter');
    await page.getByText('Removed: one slice of teff bread.').waitFor();
    await expect.poll(focused).toBe('Change the plate six unsalted crackers');
    await page.getByRole('button', { name: 'Undo the removal of one slice of teff bread' }).press('Enter');
    await change().waitFor();
    await expect.poll(focused).toBe('Change the plate six unsalted crackers');
  });
});
