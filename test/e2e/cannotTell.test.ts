import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, type Workbench } from './workbench.ts';

const reason = 'sodium of Turkey pastrami is unknown (not on the label)';

// The one food of the demo survey that nobody can judge: wherever its verdict stands, the reason stands beside it.
describe.skipIf(browserPath === undefined)('the reason of a "can\'t tell" (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    complaints = complaintsOf(page);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });

  test('[YST-3] a row of the survey says it, with what is known so far once the row is picked', async () => {
    await page.goto(`${workbench.address}/`);
    await page.getByRole('button', { name: /^can't tell 1/ }).click();
    const row = page.getByRole('row', { name: 'Turkey pastrami' });
    await row.getByText(reason, { exact: true }).waitFor();
    expect(await row.textContent()).toContain("can't tell");
    await row.click({ position: { x: 8, y: 8 } });
    await row.getByText(`Can't tell: ${reason}; known so far: 20 mg sodium against 220 kcal`).waitFor();
  });

  test('[YST-3] the printed table says it, and the rows of the screen are there again behind it', async () => {
    await page.emulateMedia({ media: 'print' });
    const cells = page.getByRole('row', { name: 'Turkey pastrami' }).getByRole('cell');
    expect(await cells.last().textContent()).toMatch(/^can't tell/);
    expect(await cells.last().textContent()).toContain(reason);
    await page.emulateMedia({ media: null });
    await page.getByRole('row', { name: 'Turkey pastrami' }).getByText(reason).waitFor();
  });

  test('[YST-3] its name leads to the page of the food, which says it under every portion; nothing was complained of', async () => {
    await page.getByRole('link', { name: 'Turkey pastrami' }).click();
    const how = page.getByRole('region', { name: 'How much of it fits' });
    for (const place of ['Home', 'End']) {
      await how.getByRole('slider', { name: 'Portion' }).press(place);
      await how.getByText(`Can't tell: ${reason}`).waitFor();
    }
    expect(complaints).toEqual([]);
  });
});
