import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

interface Target {
  readonly item: string;
  readonly range?: [number, number | null];
  readonly limit?: string;
  readonly says: string;
}

// A client after a transplant with a milk allergy: the real program, its demo shelf, and a real Chromium.
describe.skipIf(browserPath === undefined)('what fits in a browser (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[];
  let client: string;

  const call = async (path: string, body: unknown) => {
    const response = await page.request.post(`${workbench.address}/api${path}`, { data: body });
    expect(response.ok(), `${path}: ${response.status()}`).toBe(true);
    return response.json();
  };

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    complaints = complaintsOf(page);
    const day = (back: number): string => new Date(Date.now() - back * 86_400_000).toISOString().slice(0, 10);
    const { id, version } = await call('/clients', { name: 'W. F.' });
    client = id;
    const assessment = {
      on: day(1),
      sex: 'female',
      age: { years: 50 },
      treatment: { setting: 'transplant', transplantedOn: day(200) },
      diabetes: false,
      height: { value: 165, unit: 'cm' },
      weighings: [{ weight: { value: 70, unit: 'kg' }, kind: 'actual', on: day(2) }],
      labs: [],
      conditions: [],
      medicines: ['tacrolimus'],
      supplements: [],
      symptoms: [],
      allergies: ['alergia a la leche'],
      avoidedFoods: [],
      goals: [],
    };
    const proposed = await call(`/clients/${id}/assessments`, { version, assessment });
    const targets = (proposed.targets as readonly Target[]).map(({ item, range, limit, says }) => {
      // A default phosphorus figure, as a clinic would sign it.
      if (item === 'phosphorus') return { item, from: 'own', reason: 'clinic default', says, range: [0, 1000], limit: 'at-most' };
      if (item === 'sodium') return { item, from: 'own', reason: 'edema', says, range: [0, 2000], limit: 'at-most' };
      const isFluid = item === 'fluid' && range !== undefined;
      if (isFluid) return { item, from: 'own', reason: 'one figure', says, range: [range[0], null], limit: 'at-least' };
      return { item, from: 'proposal', says, ...(range === undefined ? {} : { range, limit }) };
    });
    const { assessmentId } = proposed;
    await call(`/clients/${id}/prescriptions`, {
      version: proposed.version,
      assessmentId,
      targets,
      by: 'A. Dietitian',
      credentials: 'RDN',
    });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });

  test('[CLT-60] [CLT-62] [CLT-63] [CLT-64] the screen says first what is not for the client, and what the label does not tell', async () => {
    await page.goto(`${workbench.address}/clients/${client}`);
    const fits = page.getByRole('region', { name: 'What fits' });
    await fits.getByLabel('sandwich slices').check();
    const row = (name: string) => fits.getByRole('row').filter({ hasText: name });
    await row('Medium cheddar slices').getByText('Not for this client: milk (allergy).').waitFor();
    expect(await row('Medium cheddar slices').textContent()).not.toMatch(/\d+%|\d slices/);
    await row('Turkey breast, no salt added').getByText('Eat it only heated until it steams.').waitFor();
    await row('Turkey breast, no salt added').getByText('; phosphorus not known.').waitFor();
    expect(await row('Chickpea and turmeric slices').textContent()).not.toContain('steams');
    await fits.getByText(/Phosphorus could not be told for \d+ of \d+ foods; judged by additives/).waitFor();
    await fits.getByText('This whole plate may take at most 600 mg sodium').waitFor();
    expect(await violationsOf(page)).toEqual([]);
  }, 60_000);

  test('[CLT-60] a food opened from the client says the same for the client as the list did', async () => {
    await page.goto(`${workbench.address}/clients/${client}`);
    const fits = page.getByRole('region', { name: 'What fits' });
    await fits.getByLabel('sandwich slices').check();
    const turkey = fits.getByRole('row').filter({ hasText: 'Turkey breast, no salt added' });
    // The column's name stands in the cell, unseen in a wide place.
    const inMeal = ((await turkey.getByRole('cell').nth(4).textContent()) ?? '').replace(/^Fits in this meal /, '');
    expect(inMeal).not.toBe('');
    await turkey.getByRole('link').click();
    const here = page.getByRole('region', { name: /^For W\. F\., / });
    await here.getByText('Eat it only heated until it steams.').waitFor();
    expect(await here.textContent()).toContain(`Fits in this meal: ${inMeal}.`);
    expect(page.url()).not.toMatch(/W\.|F\.|name/);
    expect(await violationsOf(page)).toEqual([]);
    await here.getByRole('link', { name: 'Back to the client' }).click();
    await fits.getByText('Not for this client: milk (allergy).').first().waitFor();
    await fits.getByRole('link', { name: 'Medium cheddar slices' }).click();
    await page
      .getByRole('region', { name: /^For W/ })
      .getByText('Not for this client: milk (allergy).')
      .waitFor();
    expect(await page.getByRole('region', { name: /^For W/ }).textContent()).not.toContain('Fits in');
  }, 60_000);

  test('[CLT-60] what cannot be told is asked about, with the reason, in the list and on the page of the food', async () => {
    const label = {
      name: 'Rice slices',
      category: 'sandwich slices',
      serving: { grams: 28 },
      panel: { energyKcal: 90 },
      statement: 'RICE, SALT.',
    };
    await call('/foods', { label });
    await page.goto(`${workbench.address}/clients/${client}`);
    const fits = page.getByRole('region', { name: 'What fits' });
    await fits.getByLabel('sandwich slices').check();
    const rice = fits.getByRole('row').filter({ hasText: 'Rice slices' });
    const reason = "Can't tell: sodium of Rice slices is unknown (not on the label)";
    await rice.getByText(reason).waitFor();
    expect(await rice.textContent()).toContain("can't tell");
    await rice.getByRole('link').click();
    await page
      .getByRole('region', { name: /^For W/ })
      .getByText(reason)
      .waitFor();
  }, 60_000);

  test('[YST-39] the Food screen has no portion for what no portion changes, and says why', async () => {
    const foods = await (await page.request.get(`${workbench.address}/api/foods?search=oven-roasted%20turkey`)).json();
    await page.goto(`${workbench.address}/foods/${foods[0].id}?yardstick=no-phosphate-additives`);
    const how = page.getByRole('region', { name: 'How much of it fits' });
    await how.getByText('No portion changes this.').waitFor();
    await how.getByText(/sodium phosphate.* named on the label/i).waitFor();
    expect(await how.getByRole('slider').count()).toBe(0);
    expect(await how.textContent()).not.toContain('the most that fits');
    expect(complaints).toEqual([]);
  }, 60_000);
});
