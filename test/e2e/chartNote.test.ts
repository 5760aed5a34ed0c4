import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

const passphrase = 'nine otters under the bridge';

// The invented client who is not on dialysis: a note is written, left half typed, kept and corrected, in a real browser.
describe.skipIf(browserPath === undefined)('the chart note (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[];
  const client = 'M. T. (demo)';

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    complaints = complaintsOf(page);
    await page.goto(`${workbench.address}/clients`);
    await page.getByRole('link', { name: client }).click();
    await shown(page);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });

  const shown = (on: Page) => on.getByRole('heading', { level: 1, name: client }).waitFor();
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  const section = (name: string, on = page) => on.getByRole('textbox', { name, exact: true });
  const keptAfter = (type: () => Promise<unknown>) =>
    Promise.all([page.waitForResponse(answer => answer.request().method() === 'PUT' && answer.url().endsWith('/drafts/note')), type()]);
  const listed = async (): Promise<readonly string[]> =>
    ((await (await workbench.fetch('/api/clients/drafts')).json()) as readonly { readonly form: string }[]).map(({ form }) => form);
  const openToWrite = async (): Promise<void> => {
    if ((await button('Write a note').count()) === 0) await page.locator('summary', { hasText: /^Chart note$/ }).click();
    await button('Write a note').click();
    await section('Diagnosis').waitFor();
  };
  const send = (method: string, path: string, body: unknown) =>
    workbench.fetch(`/api/clients/${path}`, {
      method,
      headers: { 'content-type': 'application/json', origin: workbench.address },
      body: JSON.stringify(body),
    });

  test('[NOTE-24] [WEB-4] what is typed is back after a reload and after a lock in the middle of typing', async () => {
    await openToWrite();
    expect(await violationsOf(page)).toEqual([]);
    await keptAfter(() => section('Diagnosis').fill('Salty soups twice a day. 431'));
    await page.reload();
    await shown(page);
    await page.getByText(/^A note was begun on /).waitFor();
    await button('Go on with the note').click();
    await page.getByText(/did not save is back/).waitFor();
    expect(await section('Diagnosis').inputValue()).toBe('Salty soups twice a day. 431');
    await keptAfter(() => button('Add: problem statement').click());
    await keptAfter(() => page.keyboard.type('High fluid intake related to thirst.'));
    await page.getByRole('radio', { name: /^Interval note/ }).check();
    await keptAfter(() => page.getByRole('radio', { name: 'partly' }).check());
    expect((await send('PUT', 'passphrase', { next: passphrase })).status).toBe(200);
    expect((await send('POST', 'lock', { open: false })).status).toBe(200);
    await page.getByRole('heading', { name: 'Client data is locked' }).waitFor();
    expect(await page.content()).not.toMatch(/431|thirst/);
    await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
    await page.keyboard.press('Enter');
    await page.goto(`${workbench.address}/clients`);
    await page.getByRole('link', { name: client }).click();
    await button('Go on with the note').click();
    await page.getByText(/did not save is back/).waitFor();
    expect(await section('Problem statement').inputValue()).toBe('High fluid intake related to thirst.');
    expect(await page.getByRole('radio', { name: 'partly' }).isChecked()).toBe(true);
    await page.getByRole('radio', { name: /^Full note/ }).check();
    expect(await section('Diagnosis').inputValue()).toBe('Salty soups twice a day. 431');
  }, 90_000);

  test('[WEB-25] a second window says that the note is open elsewhere', async () => {
    const other = await page.context().newPage();
    await other.goto(page.url());
    await shown(other);
    await other.getByRole('button', { name: 'Go on with the note' }).click();
    await other
      .getByRole('form', { name: 'Note' })
      .getByText(/open in another window too/)
      .waitFor();
    await other.close();
  }, 30_000);

  test('[NOTE-28] results that come in meanwhile name the sections that they touch; nothing typed is changed', async () => {
    const labs = section('Laboratory results');
    await keptAfter(() => labs.fill(`mine: ${'x'.repeat(20)}`));
    await button('Add results').click();
    await page.getByRole('spinbutton', { name: 'Value' }).fill('4.9');
    await page.getByRole('button', { name: 'Keep the results' }).click();
    await page.getByText(/These sections would read otherwise now: .*Laboratory results/).waitFor();
    expect(await labs.inputValue()).toBe(`mine: ${'x'.repeat(20)}`);
    expect(await violationsOf(page)).toEqual([]);
    await button('Leave my text of Laboratory results').click();
    expect(await labs.inputValue()).toBe(`mine: ${'x'.repeat(20)}`);
    expect(await button('Take the new text of Laboratory results').count()).toBe(0);
    await button('Take the new text of Monitoring and evaluation').click();
    expect(await section('Monitoring and evaluation').inputValue()).toContain('potassium: due by');
    expect(await section('Diagnosis').inputValue()).toBe('Salty soups twice a day. 431');
  }, 60_000);

  test('[NOTE-25] a note that is too long is told and not kept; then it is kept by the keyboard, printed alone, and corrected', async () => {
    const assessment = section('Assessment');
    const before = await assessment.inputValue();
    await assessment.fill('y'.repeat(50_001));
    await page.getByText('The note is too long to be kept.').waitFor();
    expect(await button('Keep the note').isDisabled()).toBe(true);
    expect((await assessment.inputValue()).length).toBe(50_001);
    await keptAfter(() => assessment.fill(before));
    await page.getByRole('textbox', { name: 'Written by' }).fill('Ottoline Farrowby, RDN');
    await page.keyboard.press('Control+s');
    await button('Correct it in a new note').waitFor();
    await expect.poll(listed).toEqual([]);
    const kept = page.locator('pre');
    const text = String(await kept.textContent());
    expect(text).toContain('Salty soups twice a day. 431\nHigh fluid intake related to thirst.');
    expect(text).toContain('By Ottoline Farrowby, RDN');
    expect(await violationsOf(page)).toEqual([]);
    for (const [label, name] of [
      ['Save the kept note as DOCX', 'note.docx'],
      ['Save the kept note as FHIR R4', 'note.fhir.json'],
    ] as const) {
      const download = page.waitForEvent('download');
      await button(label).click();
      expect((await download).suggestedFilename()).toBe(name);
    }
    await page.emulateMedia({ media: 'print' });
    await page.getByRole('heading', { level: 1, name: /^Nutrition note/ }).waitFor();
    expect(await page.locator('article', { hasText: 'Salty soups twice a day. 431' }).isVisible()).toBe(true);
    expect(await page.getByRole('heading', { level: 1, name: client, exact: true }).isVisible()).toBe(false);
    expect(await kept.isVisible()).toBe(false);
    await page.emulateMedia({ media: null });
    await button('Correct it in a new note').click();
    expect(await section('Diagnosis').inputValue()).toContain('Salty soups twice a day. 431\nHigh fluid');
    await section('Diagnosis').fill('Salty soups once a day.');
    // Somebody else changes the record meanwhile: that is told once, what is typed stays, and then it is kept.
    const clientId = page.url().split('/').at(-1)!;
    const { version } = (await (await workbench.fetch(`/api/clients/${clientId}`)).json()) as { version: number };
    expect((await send('PUT', `${clientId}/meals`, { version, pattern: [{ name: 'lunch', percent: 100 }] })).status).toBe(200);
    await button('Keep the note').click();
    await page.getByText('Somebody else changed this').waitFor();
    expect(await section('Diagnosis').inputValue()).toBe('Salty soups once a day.');
    await button('Keep the note').click();
    await page.getByRole('button', { name: /corrects an earlier one/ }).waitFor();
    await page.getByRole('button', { name: /corrected by a later one/ }).click();
    await page.locator('pre', { hasText: 'It is corrected by the note written' }).waitFor();
    expect(await page.locator('pre').textContent()).toContain('Salty soups twice a day. 431');
  }, 90_000);

  // The browser tells of each answer that was refused: while it was locked, and over what somebody else had changed.
  test('the page had nothing else to complain about', () =>
    expect(complaints.filter(one => !/423 \(Locked\)|409 \(Conflict\)/.test(one))).toEqual([]));
});
