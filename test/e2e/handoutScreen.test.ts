import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readPdf } from '../pdf.ts';
import {
  browserPath,
  complaintsOf,
  launchBrowser,
  lookAgain,
  removeFolder,
  savedBy,
  startWorkbench,
  violationsOf,
  type Workbench,
} from './workbench.ts';

// What a person does: a client is assessed, a prescription signed, and the handout made from it; a handout on a topic is begun.
describe.skipIf(browserPath === undefined)('handouts in a browser (skipped where no Chromium-family browser is installed)', () => {
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
  const frame = () => page.frameLocator('iframe').locator('body');
  const handout = () => page.locator('details').filter({ has: page.locator('summary', { hasText: /^Handout$/ }) });

  test('[HND-18] a signed prescription becomes a handout with its numbers and without a name', { timeout: 90_000 }, async () => {
    await page.goto(`${bench.address}/clients`);
    await page.getByLabel('A new client: initials or a code').fill('Q. W.');
    await page.getByRole('button', { name: 'Add the client' }).click();
    await page.getByRole('button', { name: 'New assessment' }).click();
    await page.getByRole('combobox', { name: 'Setting' }).selectOption('ckd-not-on-dialysis');
    await page.getByRole('combobox', { name: 'Sex (for formulas)' }).selectOption('female');
    await page.getByRole('spinbutton', { name: 'or age in years' }).fill('60');
    await page.getByRole('combobox', { name: 'Height in' }).selectOption('ft');
    await page.getByRole('spinbutton', { name: 'Feet' }).fill('5');
    await page.getByRole('spinbutton', { name: 'Inches' }).fill('5');
    await page.getByRole('button', { name: 'Add a weight' }).click();
    await page.getByRole('spinbutton', { name: 'Weight', exact: true }).fill('154');
    await page.getByRole('combobox', { name: 'Unit' }).first().selectOption('lb');
    await page.getByRole('button', { name: 'Keep the assessment' }).click();
    await page.getByRole('button', { name: 'Sodium', exact: true }).click();
    await page.getByRole('combobox', { name: /^Sodium: / }).selectOption('own');
    await page.getByRole('spinbutton', { name: 'To, mg' }).fill('2000');
    await page.getByRole('textbox', { name: 'Sodium: reason' }).fill('asked for by the client');
    await page.getByRole('textbox', { name: /^Name/ }).fill('Ottoline Farrowby');
    await page.getByLabel('Credentials').fill('MS, RDN');
    await page.getByRole('button', { name: 'Sign the prescription' }).click();
    await page.locator('summary', { hasText: /^Handout$/ }).click();
    expect(await handout().getByLabel('Author').inputValue()).toBe('Ottoline Farrowby');
    await handout().getByLabel('Add a category').selectOption('sandwich slices');
    await handout().getByLabel('Aisle', { exact: true }).fill('Deli counter');
    await handout().getByLabel('Whom to call').fill('Kidney clinic: 555-0142');
    await frame().getByRole('heading', { name: 'For your fridge' }).waitFor();
    const text = String(await frame().textContent());
    // 30 % of 2,000 mg a day stands beside lunch.
    expect(text).toMatch(/Each day\s*2,000 mg/);
    expect(text).toMatch(/Lunch\s*600 mg/);
    await frame().getByText('Kidney clinic: 555-0142').first().waitFor();
    expect(text).not.toContain('Q. W.');
    expect(await violationsOf(page)).toEqual([]);
  });

  test('[HND-12] the reading grade stands beside it, and a hard sentence of the author is pointed out', { timeout: 60_000 }, async () => {
    await handout().getByText('without food names').waitFor();
    const hard = 'Notwithstanding considerable individual variability, hyperphosphatemia necessitates comprehensive dietary modification.';
    await handout().getByLabel('From you, in your words').fill(hard);
    await handout().getByText(`“${hard}”`).waitFor();
    await handout().getByLabel('From you, in your words').fill('Bread counts too.');
    await frame().getByText('Bread counts too.').waitFor();
    await handout().getByLabel('Language').selectOption('es');
    await frame().getByRole('heading', { name: 'Para su refrigerador' }).waitFor();
    await handout().getByText('Not measured: the formula is for English.').waitFor();
    await handout().getByLabel('Language').selectOption('en');
    await frame().getByRole('heading', { name: 'For your fridge' }).waitFor();
  });

  test('[HND-8] the PDF is tagged and its first sheet is the fridge page; what was written is kept', { timeout: 90_000 }, async () => {
    await handout().getByLabel('On paper').check();
    await handout()
      .getByRole('img', { name: /^Sheet 1 of/ })
      .waitFor({ timeout: 30_000 });
    const pdf = await readPdf(await saved(() => handout().getByRole('button', { name: 'PDF, Letter', exact: true }).click()));
    expect(pdf).toMatchObject({ language: 'en', isMarked: true });
    expect(pdf.pages[0]!.text).toContain('For your fridge');
    expect(pdf.pages[0]!.text).toContain('When to call');
    expect(pdf.pages[1]!.text).not.toContain('For your fridge');
    await handout().getByRole('button', { name: 'Keep this for the next time' }).click();
    await page.getByText('Kept with the record.').waitFor();
    await page.reload();
    await page.locator('summary', { hasText: /^Handout$/ }).click();
    expect(await handout().getByLabel('From you, in your words').inputValue()).toBe('Bread counts too.');
  });

  test('[HND-21] a handout that another window kept meanwhile is not written over unseen', { timeout: 90_000 }, async () => {
    const second = await page.context().newPage();
    await second.goto(page.url());
    await second.locator('summary', { hasText: /^Handout$/ }).click();
    await second.getByLabel('From you, in your words').fill('Soup counts as well.');
    await handout().getByLabel('From you, in your words').fill('Ask about rolls.');
    await handout().getByRole('button', { name: 'Keep this for the next time' }).click();
    await page.getByText('Kept with the record.').waitFor();
    // It reads the record anew, which has another version now; what is typed was typed on the handout before.
    await lookAgain(second, `/api/clients/${page.url().split('/').at(-1)}`);
    await second.getByRole('button', { name: 'Keep this for the next time' }).click();
    await second.getByText('The handout was kept in another window meanwhile.').waitFor();
    expect(await second.getByLabel('From you, in your words').inputValue()).toBe('Soup counts as well.');
    await second.close();
    await handout().getByLabel('From you, in your words').fill('Bread counts too.');
    await handout().getByRole('button', { name: 'Keep this for the next time' }).click();
    await page.getByText('Kept with the record.').waitFor();
  });

  test('[WEB-4] what was typed and not kept is back after a reload, from the vault and from nowhere else', {
    timeout: 60_000,
  }, async () => {
    await handout().getByLabel('Whom to call').fill('Kidney clinic: 555-0199');
    // Kept when typing pauses.
    await page.waitForResponse(response => response.url().endsWith('/drafts/handout') && response.request().method() === 'PUT');
    expect(await page.evaluate('localStorage.length')).toBe(0);
    await page.reload();
    await page.locator('summary', { hasText: /^Handout$/ }).click();
    await handout()
      .getByText(/and did not save is back\./)
      .waitFor();
    expect(await handout().getByLabel('Whom to call').inputValue()).toBe('Kidney clinic: 555-0199');
    await handout().getByRole('button', { name: 'Keep this for the next time' }).click();
    await page.getByText('Kept with the record.').waitFor();
    await page.reload();
    await page.locator('summary', { hasText: /^Handout$/ }).click();
    await frame().getByText('Kidney clinic: 555-0199').first().waitFor();
    expect(await handout().getByLabel('Whom to call').inputValue()).toBe('Kidney clinic: 555-0199');
    expect(await handout().getByText('is back.').count()).toBe(0);
  });

  test('[HND-3] a handout on a topic is begun, told what it lacks, saved, removed and put back', { timeout: 60_000 }, async () => {
    await page.goto(`${bench.address}/guides`);
    await page.getByRole('button', { name: 'Begin a handout' }).click();
    await page.getByText('Needed: text.').first().waitFor();
    await page.getByLabel('Author').fill('Ottoline Farrowby');
    await page.getByLabel('Title').fill('A soup that fits');
    await page.getByLabel('Add a category').selectOption('soups and broths');
    await frame().getByRole('heading', { level: 1, name: 'A soup that fits' }).waitFor();
    expect(await violationsOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('Saved', { exact: true }).waitFor();
    await page.getByRole('link', { name: 'All guides and handouts' }).click();
    await page.getByRole('button', { name: 'Remove the handout A soup that fits' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('link', { name: 'A soup that fits' }).waitFor();
  });

  test('[WEB-4] what was typed and not saved is back after a reload, and gone when it is saved', { timeout: 60_000 }, async () => {
    await page.getByRole('link', { name: 'A soup that fits' }).click();
    await page.getByLabel('Whom to call').fill('Kidney clinic: 555-0142');
    await page.getByText('Not saved yet').waitFor();
    await page.reload();
    await page.getByText(/^What you typed here on .* and did not save is back\./).waitFor();
    expect(await page.getByLabel('Whom to call').inputValue()).toBe('Kidney clinic: 555-0142');
    await page.getByRole('button', { name: 'Start over' }).click();
    expect(await page.getByLabel('Whom to call').inputValue()).toBe('');
    await page.getByText('Saved', { exact: true }).waitFor();
    await page.getByLabel('Whom to call').fill('Kidney clinic: 555-0143');
    // Leaving loses nothing, so nobody is asked.
    await page.getByRole('link', { name: 'All guides and handouts' }).click();
    await page.getByRole('link', { name: 'A soup that fits' }).click();
    await page.getByText(/and did not save is back\./).waitFor();
    await page.keyboard.press('Control+s');
    await page.getByText('Saved', { exact: true }).waitFor();
    await page.waitForFunction('localStorage.length === 0');
    await page.reload();
    await frame().getByText('Kidney clinic: 555-0143').first().waitFor();
    expect(await page.getByText('is back.').count()).toBe(0);
  });

  test('[WEB-4] what comes back is not written over what was saved meanwhile, unless it is said so', { timeout: 60_000 }, async () => {
    await page.getByLabel('For whom, as it will stand on the page').fill('Mine');
    await page.getByText('Not saved yet').waitFor();
    const id = page.url().split('/').at(-1);
    const all = (await (await bench.fetch('/api/handouts')).json()) as {
      readonly handout: { readonly id: string };
      readonly version: number;
    }[];
    const { handout: theirs, version } = all.find(one => one.handout.id === id)!;
    const put = await bench.fetch(`/api/handouts/${id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', origin: bench.address },
      body: JSON.stringify({ handout: { ...theirs, reader: 'Theirs' }, version }),
    });
    expect(put.status).toBe(200);
    await page.reload();
    await page.getByText(/and did not save is back\./).waitFor();
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('button', { name: 'Take the other state' }).click();
    await expect.poll(() => page.getByLabel('For whom, as it will stand on the page').inputValue()).toBe('Theirs');
    await page.getByText('Saved', { exact: true }).waitFor();
    await page.waitForFunction('localStorage.length === 0');
    await page.getByRole('link', { name: 'All guides and handouts' }).click();
  });

  test('[HND-15] the screens fit a phone, and nothing complained', { timeout: 60_000 }, async () => {
    await page.setViewportSize({ width: 320, height: 800 });
    await page.getByRole('link', { name: 'A soup that fits' }).click();
    await frame().getByRole('heading', { level: 1 }).waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    // The browser tells of every conflict that a test made.
    expect(complaints.filter(one => !one.includes('409 (Conflict)'))).toEqual([]);
  });
});
