import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

// The invented client on peritoneal dialysis: what is typed about a person and not saved, over reloads, in a real browser.
describe.skipIf(browserPath === undefined)('drafts about a client (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[];
  const client = 'E. P. (demo)';

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    complaints = complaintsOf(page);
    await page.goto(`${workbench.address}/clients`);
    await page.getByRole('link', { name: client }).click();
    await page.getByRole('heading', { level: 1, name: client }).waitFor();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });

  /** Answered: what is typed stands in the vault. */
  const keptAfter = (form: string, type: () => Promise<unknown>) =>
    Promise.all([page.waitForResponse(answer => answer.request().method() === 'PUT' && answer.url().endsWith(`/drafts/${form}`)), type()]);
  const reload = async (): Promise<void> => {
    await page.reload();
    await page.getByRole('heading', { level: 1, name: client }).waitFor();
  };
  const listed = async (): Promise<readonly string[]> =>
    ((await (await workbench.fetch('/api/clients/drafts')).json()) as readonly { readonly form: string }[]).map(({ form }) => form);

  test('[WEB-4] [SRV-26] an assessment that was begun is there after a reload, and gone once it is cancelled', async () => {
    await page.getByRole('button', { name: 'New assessment' }).click();
    const urine = page.getByRole('spinbutton', { name: 'Urine, mL a day' });
    const before = await urine.inputValue();
    await keptAfter('assessment', () => urine.fill('431'));
    // Neither the browser's storage nor the names by which its windows agree tell anything typed or anybody's name.
    const held = await page.evaluate(
      'navigator.locks.query().then(({ held }) => JSON.stringify([held, { ...localStorage }, { ...sessionStorage }]))',
    );
    expect(held).toMatch(/platewright-vault [0-9a-f-]{36} assessment/);
    expect(held).not.toMatch(/431|E\. P\./);
    await reload();
    expect(await urine.count()).toBe(0);
    expect(await violationsOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Go on with the assessment' }).click();
    await page.getByText(/^What you typed here on .* and did not save is back\./).waitFor();
    expect(await urine.inputValue()).toBe('431');
    expect(await violationsOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Start over' }).click();
    expect(await urine.inputValue()).toBe(before);
    await keptAfter('assessment', () => urine.fill('432'));
    await page.getByRole('button', { name: 'Cancel' }).click();
    await urine.waitFor({ state: 'detached' });
    await expect.poll(listed).toEqual([]);
    await reload();
    expect(await page.getByText(/was begun on/).count()).toBe(0);
  }, 60_000);

  test('[WEB-4] results that were begun are back in their rows, and gone once they are kept', async () => {
    await page.getByRole('button', { name: 'Add results' }).click();
    await page.getByRole('spinbutton', { name: 'Value' }).fill('4.4');
    await page.getByRole('button', { name: 'Add a result' }).click();
    await keptAfter('results', () => page.getByRole('spinbutton', { name: 'Value' }).last().fill('4.6'));
    await reload();
    await page.getByRole('button', { name: 'Go on with the results' }).click();
    await page.getByText(/did not save is back/).waitFor();
    const values = page.getByRole('spinbutton', { name: 'Value' });
    expect([await values.first().inputValue(), await values.last().inputValue()]).toEqual(['4.4', '4.6']);
    await page.getByRole('button', { name: 'Take out potassium 4.6 mmol/L' }).click();
    await values.nth(1).waitFor({ state: 'detached' });
    await page.keyboard.press('Control+s');
    await page.locator('summary', { hasText: 'Potassium 4.4 mmol/L' }).waitFor();
    await expect.poll(listed).toEqual([]);
  }, 60_000);

  test('[WEB-4] decisions are back for the same proposal; for another one they are shown, not filled in', async () => {
    const sodium = page.getByRole('combobox', { name: /^Sodium: / });
    const line = page.getByRole('button', { name: 'Sodium', exact: true });
    await line.click();
    await sodium.selectOption('own');
    await page.getByRole('spinbutton', { name: 'To, mg' }).fill('1900');
    await keptAfter('prescription', () => page.getByRole('textbox', { name: /^Sodium: reason/ }).fill('a try of two weeks'));
    await reload();
    await page.getByText(/did not save is back/).waitFor();
    await page.getByRole('row', { name: /^Sodium at most 1900 mg .*a try of two weeks.* own, to sign$/ }).waitFor();
    await line.click();
    expect(await page.getByRole('spinbutton', { name: 'To, mg' }).inputValue()).toBe('1900');
    // Another dry weight proposes otherwise.
    await page.getByRole('button', { name: 'Add results' }).click();
    await page.getByRole('button', { name: 'Add a weight' }).click();
    await page.getByRole('spinbutton', { name: 'Weight', exact: true }).fill('61');
    await page.getByRole('combobox', { name: 'Kind' }).selectOption('dry');
    await page.getByRole('button', { name: 'Keep the results' }).click();
    await page.getByText(/does not fit this form any more/).waitFor();
    expect(await page.locator('pre', { hasText: 'a try of two weeks' }).count()).toBe(1);
    await line.click();
    expect(await sodium.inputValue()).toBe('proposal');
    await page.getByRole('button', { name: 'Forget it' }).click();
    await expect.poll(listed).toEqual([]);
  }, 60_000);

  test('[CALC-9] a result of a calculator joins what was begun before', async () => {
    await page.getByRole('button', { name: 'New assessment' }).click();
    await keptAfter('assessment', () => page.getByRole('spinbutton', { name: 'Urine, mL a day' }).fill('433'));
    await page.goto(`${workbench.address}/calculators/kt-v-single-pool`);
    await page.getByRole('button', { name: 'Use the example' }).click();
    await page.getByText('Use in an assessment of').click();
    await page.getByRole('combobox', { name: 'Client' }).selectOption({ label: client });
    await page.getByRole('button', { name: 'Open the assessment with it' }).click();
    await page.getByText(/did not save is back/).waitFor();
    expect(await page.getByRole('spinbutton', { name: 'Urine, mL a day' }).inputValue()).toBe('433');
    expect(await page.getByRole('combobox', { name: 'Result' }).last().inputValue()).toBe('spKtV');
    expect(await page.getByRole('spinbutton', { name: 'Value' }).last().inputValue()).toBe('1.49');
    await page.getByRole('button', { name: 'Cancel' }).click();
  }, 60_000);

  test('the page had nothing to complain about', () => expect(complaints).toEqual([]));
});
