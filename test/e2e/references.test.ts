import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { foodDes, nutData, weight } from '#adapters/datasets/datasets.fixture.ts';
import { browserPath, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

// A dataset imported in a real browser on the running program (docs/rules/server.md, SRV-14).
describe.skipIf(browserPath === undefined)('composition tables in a browser (skipped where none is installed)', () => {
  let workbench: Workbench;
  beforeAll(async () => {
    workbench = await startWorkbench();
  }, 120_000);
  afterAll(async () => {
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });
  const text = (name: string, content: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(content) });

  test('[SRV-14] the files are chosen, the table is seen with edition, foods and day, and is removed', { timeout: 60_000 }, async () => {
    const browser = await launchBrowser();
    try {
      const page = await (await browser.newContext()).newPage();
      await workbench.letIn(page.context());
      await page.goto(`${workbench.address}/data`);
      const section = page.getByRole('region', { name: 'Composition tables' });
      const files = section.getByLabel('Choose the files of a table');
      await files.setInputFiles([text('notes.txt', 'nothing')]);
      await section.getByText('No composition table here').waitFor();
      await files.setInputFiles([
        text('FOOD_DES.txt', foodDes),
        text('NUT_DATA.txt', nutData),
        text('WEIGHT.txt', weight),
        // Lies in the same folder and is of no use here.
        text('FOOTNOTE.txt', '~02009~^~01~^~D~^~~^~Mix~'),
      ]);
      await section.getByText(/Standard Reference, ASCII files, newest figure of 2015-03: 6 foods, imported \d{4}-\d\d-\d\d/).waitFor();
      await section.getByText('Kept: 6 foods of USDA National Nutrient Database').waitFor();
      expect(await violationsOf(page, ['[aria-labelledby="reference-title"]'])).toEqual([]);
      await page.reload();
      await section.getByText('6 foods').waitFor();
      await section.getByRole('button', { name: /^Remove USDA/ }).click();
      await section.getByText('6 foods').waitFor({ state: 'detached' });
    } finally {
      await browser.close();
    }
  });
});
