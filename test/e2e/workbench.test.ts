import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  browserPath,
  launchBrowser,
  lookAgain,
  quiet,
  removeFolder,
  savedBy,
  startWorkbench,
  violationsOfBoth,
  type Workbench,
} from './workbench.ts';

// The real program and a real Chromium, doing what a dietitian does.
describe.skipIf(browserPath === undefined)('the workbench in a browser (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  const complaints: string[] = [];
  const outside: string[] = [];

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
    await workbench.letIn(context);
    page = await context.newPage();
    page.on('console', message => message.type() === 'error' && complaints.push(message.text()));
    page.on('pageerror', error => complaints.push(error.message));
    page.on(
      'request',
      request => request.url().startsWith(workbench.address) || /^(?:blob|data):/.test(request.url()) || outside.push(request.url()),
    );
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });
  const open = (path: string) => page.goto(`${workbench.address}${path}`);
  const rows = () => page.getByRole('row');

  test('the first start shows the demo survey', async () => {
    await open('/');
    await page.getByRole('heading', { name: '31 foods' }).waitFor();
    await page.getByRole('button', { name: 'fits 14' }).waitFor();
    expect(await page.getByText('Its foods are invented.').isVisible()).toBe(true);
  });

  test('the food that misses by 10 mg is found, with its way in', async () => {
    await open('/');
    await page.getByRole('button', { name: /^nearly/ }).click();
    const row = rows().filter({ hasText: 'Beef, reduced sodium' });
    await row.waitFor();
    await row.getByText('10 mg over').waitFor();
    await row.click({ position: { x: 8, y: 8 } });
    await row.getByText(/52 g instead of/).waitFor();
    expect(await row.getAttribute('aria-selected')).toBe('true');
    expect(page.url()).toContain('food=');
    await page.getByText(/Beef, reduced sodium: 80 kcal, 230 mg sodium, nearly/).waitFor({ state: 'attached' });
  });

  test('another companion moves the verdicts, and the address keeps it', async () => {
    await open('/');
    await page.getByLabel('Plate', { exact: true }).selectOption({ label: 'two slices of white bread' });
    await page.getByRole('button', { name: 'fits 0' }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'fits 0' }).waitFor();
    await page.getByLabel('Category', { exact: true }).selectOption('cold cereals');
    await page.getByRole('heading', { name: '20 foods' }).waitFor();
  });

  test('dots and rows are walked with the arrow keys', async () => {
    await open('/');
    await page.getByRole('heading', { name: '31 foods' }).waitFor();
    await page.getByRole('application').focus();
    await page.keyboard.press('ArrowRight');
    await page.locator('[aria-selected=true]').waitFor();
    const first = page.url();
    await page.getByLabel('Foods of the survey; arrow keys pick a row').focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.url()).not.toBe(first);
  });

  test('a table of labels is pasted, mapped, kept, and undone', async () => {
    await open('/data');
    await page.getByText('Paste a table').click();
    await page
      .getByLabel(/Rows with headings/)
      .fill('Produkt\tCalories\tSodium (mg)\tShelf\nRye slices\t90\t180\tsandwich slices\nOat slices\t=1+1\t200\tsandwich slices\n');
    await page.getByRole('button', { name: 'Look at it' }).click();
    await page.getByRole('combobox', { name: 'Produkt' }).selectOption('name');
    await page.getByRole('combobox', { name: 'Shelf' }).selectOption('category');
    await page.getByText('Row 2: Rye slices begins a food').waitFor();
    await page
      .getByText(/Row 3, .*found =1\+1/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Keep 2 labels' }).click();
    await page.getByText(/Kept: 2 new foods/).waitFor();
    await page.getByRole('button', { name: 'Undo this import' }).click();
    await expect.poll(async () => (await (await workbench.fetch('/api/foods?search=rye%20slices')).json()) as unknown[]).toEqual([]);
  });

  test('a real file of labels is imported', async () => {
    await open('/data');
    const csv = readFileSync(new URL('../../data/demo/labels.csv', import.meta.url));
    await page.locator('input[type=file]').first().setInputFiles({ name: 'labels.csv', mimeType: 'text/csv', buffer: csv });
    await page.getByText(/What the 73 rows do/).waitFor();
    await page.getByRole('button', { name: /Keep \d+ labels/ }).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
  });

  test('a label is typed: the audit speaks, then the food is there', async () => {
    await open('/data');
    const form = page.locator('form').first();
    await form.getByLabel('Name of the food').fill('Typed ham');
    await form.getByLabel('Sodium (mg)').fill('145');
    await form.getByLabel('Calories').fill('70');
    await form.getByLabel('Ingredient statement').fill('HAM, WATER, SODIUM PHOSPHATES');
    await page.getByText(/sodium goes by 5 mg up to 140/).waitFor();
    await page.getByText('Additives that count: sodium phosphates.').waitFor();
    await form.getByRole('button', { name: 'Save the label' }).click();
    await page.getByRole('link', { name: 'Typed ham' }).click();
    await page.getByRole('heading', { level: 1, name: 'Typed ham' }).waitFor();
    expect(await page.locator('mark').allTextContents()).toEqual(['SODIUM PHOSPHATES']);
  });

  test('a newer label shows what changed; a second tab is told and loses nothing', async () => {
    const [food] = (await (await workbench.fetch('/api/foods?search=typed%20ham')).json()) as { id: string }[];
    const second = await context.newPage();
    await second.goto(`${workbench.address}/foods/${food!.id}`);
    await second.getByRole('button', { name: 'Add a newer label' }).click();
    await second.getByLabel('Sodium (mg)').fill('777');
    await open(`/foods/${food!.id}`);
    await page.getByRole('button', { name: 'Add a newer label' }).click();
    await page.getByLabel('Sodium (mg)').fill('300');
    await page.getByRole('button', { name: 'Save the label' }).click();
    await page.getByText('Sodium: 145 mg before, 300 mg now.').waitFor();
    await second.getByRole('button', { name: 'Save the label' }).click();
    await second.getByText('Somebody else changed this.').waitFor();
    expect(await second.getByLabel('Sodium (mg)').inputValue()).toBe('777');
    await second.close();
  });

  test('a label that another window corrected is not corrected again unseen', async () => {
    const [food] = (await (await workbench.fetch('/api/foods?search=typed%20ham')).json()) as { id: string }[];
    const second = await context.newPage();
    const correctIn = async (sheet: Page, sodium: string) => {
      await sheet.goto(`${workbench.address}/foods/${food!.id}`);
      await sheet.getByRole('button', { name: 'Correct a misread figure' }).first().click();
      await sheet.getByLabel('Sodium (mg)').fill(sodium);
      await sheet.getByLabel('Why is it corrected?').fill('a blurred figure');
    };
    await correctIn(second, '888');
    await correctIn(page, '310');
    await page.getByRole('button', { name: 'Save the label' }).click();
    await page.getByRole('heading', { name: 'Correct a misread figure' }).waitFor({ state: 'detached' });
    // Looked at again, the page reads the food anew; what is typed was typed on the state before.
    await lookAgain(second, `/api/foods/${food!.id}`);
    await second.getByText('a blurred figure').first().waitFor();
    await second.getByRole('button', { name: 'Save the label' }).click();
    await second.getByText('Somebody else changed this.').waitFor();
    expect(await second.getByLabel('Sodium (mg)').inputValue()).toBe('888');
    await second.close();
  });

  test('a recheck day that another window set meanwhile is told, and the day that was typed stays', async () => {
    const [food] = (await (await workbench.fetch('/api/foods?search=typed%20ham')).json()) as { id: string }[];
    const second = await context.newPage();
    await second.goto(`${workbench.address}/foods/${food!.id}`);
    await second.getByLabel('Recheck by').first().fill('2031-04-01');
    await open(`/foods/${food!.id}`);
    await page.getByLabel('Recheck by').first().fill('2031-03-01');
    await page.getByRole('button', { name: 'Set this day' }).click();
    await page.getByRole('button', { name: 'Set this day' }).waitFor({ state: 'detached' });
    await second.getByRole('button', { name: 'Set this day' }).click();
    await second.getByText('Somebody else changed this.').waitFor();
    await second.getByText('Set now: 2031-03-01.').waitFor();
    expect(await second.getByLabel('Recheck by').first().inputValue()).toBe('2031-04-01');
    await second.getByRole('button', { name: 'Set this day' }).click();
    await second.getByRole('button', { name: 'Set this day' }).waitFor({ state: 'detached' });
    await second.close();
    await page.reload();
    expect(await page.getByLabel('Recheck by').first().inputValue()).toBe('2031-04-01');
  });

  test('a built-in yardstick is copied, tried while it is changed, and used', async () => {
    await open('/yardsticks');
    await page.getByRole('button', { name: 'Copy and change low in sodium as eaten' }).click();
    await page.getByRole('spinbutton', { name: 'Nearly: over by no more than' }).fill('0');
    await page.getByText(/nearly 3 → 0/).waitFor();
    await page.getByRole('button', { name: 'Add a test' }).click();
    // 200 mg potassium in the portion: what prints 0 to 200 stays, what prints more or nothing does not.
    await page.getByText(/fits 14 → \d+, nearly 3 → 0, over 13 → \d+, can't tell 1 → \d+/).waitFor();
    await page.getByRole('button', { name: 'Take out the test: A new test' }).click();
    await page.getByText(/fits 14 → 14, nearly 3 → 0/).waitFor();
    await page.getByLabel('As it reads in a sentence').fill('strictly low in sodium');
    await page.getByRole('button', { name: 'Save the yardstick' }).click();
    await page.getByRole('heading', { name: 'Strictly low in sodium' }).waitFor();
    await open('/');
    await page.getByLabel('Yardstick', { exact: true }).selectOption({ label: 'strictly low in sodium' });
    await page.getByRole('button', { name: 'nearly 0' }).waitFor();
  });

  test('[WEB-4] what is typed into a yardstick and not saved is back after a reload, whatever its tests are; saved, it is gone', async () => {
    const form = page.locator('form').filter({ hasText: 'A copy to change' });
    const begin = () => page.getByRole('button', { name: 'Copy and change low in sodium as eaten' }).click();
    await open('/yardsticks');
    await begin();
    await form.getByLabel('As it reads in a sentence').fill('half thought out');
    await form.getByRole('button', { name: 'Add a test' }).click();
    const added = form.getByRole('group', { name: 'A new test' });
    await added.getByLabel('Measure').selectOption({ label: 'no ingredient named' });
    await added.getByLabel('Ingredient').fill('garlic');
    await page.reload();
    await begin();
    await form.getByText('did not save is back').waitFor();
    expect(await form.getByLabel('As it reads in a sentence').inputValue()).toBe('half thought out');
    expect(await added.getByLabel('Ingredient').inputValue()).toBe('garlic');
    await form.getByRole('button', { name: 'Save the yardstick' }).click();
    await page.getByRole('heading', { name: 'Half thought out' }).waitFor();
    await form.waitFor({ state: 'detached' });
    await begin();
    await form.getByRole('button', { name: 'Add a test' }).waitFor();
    // A draft would be told within this time.
    await page.waitForTimeout(700);
    expect(await form.getByText('did not save is back').count()).toBe(0);
    expect(await form.getByLabel('As it reads in a sentence').inputValue()).toBe('low in sodium as eaten, my own');
    await page.getByRole('button', { name: 'Remove half thought out' }).click();
    await page.getByRole('heading', { name: 'Half thought out' }).waitFor({ state: 'detached' });
  });

  test('a plate is made with two companions, changed, removed and brought back', async () => {
    await open('/plates');
    await page.getByRole('button', { name: 'Add a plate' }).click();
    await page.getByLabel(/As it reads in a sentence/).fill('a cold platter');
    for (const [search, name] of [
      ['tofu', 'Herbed tofu slices · Sorrelwick Kitchen'],
      ['gouda', 'Gouda slices · Pellam Creamery'],
    ] as const) {
      await page.getByLabel('Search').fill(search);
      await page.getByRole('combobox', { name: 'Food', exact: true }).selectOption({ label: name });
      await page.getByRole('button', { name: 'Put it on the plate' }).click();
      await page.getByRole('button', { name: `Take out ${name.split(' · ')[0]}` }).waitFor();
    }
    await page.getByRole('button', { name: 'Save the plate' }).click();
    await page.getByText('1 serving of Herbed tofu slices and 1 serving of Gouda slices bring 170 kcal and 450 mg sodium.').waitFor();
    await page.getByRole('button', { name: 'Change the plate a cold platter' }).click();
    await page.getByRole('button', { name: 'Take out Gouda slices' }).click();
    await page.getByRole('button', { name: 'Save the plate' }).click();
    await page.getByText('1 serving of Herbed tofu slices brings 70 kcal and 220 mg sodium.').waitFor();
    await page.getByRole('button', { name: 'Remove the plate a cold platter' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { name: 'A cold platter' }).waitFor();
  });

  test('columns are chosen, and the survey is saved as CSV', async () => {
    await open('/');
    await page.getByText('Columns', { exact: true }).click();
    await page.getByLabel('Potassium', { exact: true }).check();
    await page.getByRole('columnheader', { name: 'Potassium' }).waitFor();
    // The open menu lies over the headings.
    await page.setViewportSize({ width: 390, height: 900 });
    expect((await page.getByRole('group', { name: /^Also show/ }).boundingBox())?.x).toBeGreaterThanOrEqual(0);
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.getByText('Columns', { exact: true }).click();
    await page.getByRole('button', { name: 'Potassium' }).click();
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as CSV' }).click()]);
    expect(download.suggestedFilename()).toBe('survey of sandwich slices.csv');
    expect(
      readFileSync(await download.path(), 'utf8')
        .trimEnd()
        .split('\n'),
    ).toHaveLength(32);
  });

  test('a survey is saved, opened again and removed; everything is exported', async () => {
    await open('/?category=cold+cereals&plate=cereal-with-milk');
    await page.getByLabel('Name of this survey').fill('Cereals with milk');
    await page.getByRole('button', { name: 'Save this survey' }).click();
    // A page that is left may not have asked yet.
    await page.getByRole('button', { name: 'Cereals with milk', exact: true }).waitFor();
    await open('/');
    await page.getByRole('button', { name: 'Cereals with milk', exact: true }).click();
    await page.getByRole('heading', { name: '20 foods' }).waitFor();
    await page.getByRole('button', { name: 'Remove Cereals with milk' }).click();
    await page.getByRole('button', { name: 'Cereals with milk', exact: true }).waitFor({ state: 'detached' });
    await open('/data');
    await page.getByLabel('With the client records').uncheck();
    await page.getByRole('button', { name: 'Make an archive' }).click();
    await page.getByText('Client records are not in it.').waitFor();
    const file = unzipSync(await savedBy(page, () => page.getByRole('link', { name: 'Save the file' }).click()));
    expect(new TextDecoder().decode(file['tables/foods.jsonl']).trim().split('\n').length).toBeGreaterThan(72);
  });

  test.each(['/', '/foods', '/foods/FOOD', '/plates', '/yardsticks', '/data'])(
    '%s: no accessibility fault, light and dark, and nothing is cut off at 320 px, as at fourfold zoom',
    async path => {
      const [food] = (await (await workbench.fetch('/api/foods?search=beef%20reduced')).json()) as { id: string }[];
      const own = await browser.newContext({ viewport: { width: 1280, height: 900 } });
      await workbench.letIn(own);
      const sheet = await own.newPage();
      await sheet.goto(`${workbench.address}${path.replace('FOOD', food!.id)}`);
      await sheet.getByRole('heading', { level: 1 }).waitFor({ state: 'attached' });
      await quiet(sheet);
      expect(await violationsOfBoth(sheet)).toEqual({ light: [], dark: [] });
      await sheet.setViewportSize({ width: 320, height: 640 });
      await sheet.reload();
      await sheet.getByRole('heading', { level: 1 }).waitFor({ state: 'attached' });
      await quiet(sheet);
      expect(await sheet.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
      await own.close();
    },
  );

  test('the demo is removed, the workspace emptied, and the empty screen says what to do first', async () => {
    await open('/data');
    await page.getByRole('button', { name: 'Remove the demo' }).click();
    await page.getByRole('button', { name: 'Load the demo' }).waitFor();
    await page.getByLabel(/type: delete everything$/).fill('delete everything');
    await page.getByRole('button', { name: 'Delete everything' }).click();
    await page.getByText(/^0 foods with 0 labels/).waitFor();
    await open('/');
    await page.getByRole('heading', { name: 'Nothing on the shelf yet' }).waitFor();
  });

  test('what was kept is there after kill -9 and another start, without the demo coming back', async () => {
    await workbench.fetch('/api/foods', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ label: { name: 'Survivor', panel: { sodiumMg: 10 } } }),
    });
    await workbench.stop('SIGKILL');
    workbench = await startWorkbench(workbench.folder);
    const foods = (await (await workbench.fetch('/api/foods')).json()) as { name: string }[];
    expect(foods.map(({ name }) => name)).toEqual(['Survivor']);
  }, 60_000);

  test('nothing was asked of another host, and the page had nothing to complain about', () => {
    expect(outside).toEqual([]);
    // The refusals that a test provoked are answers the browser reports; anything else is a fault of the page.
    expect(complaints.filter(text => !/status of (409|422)/.test(text))).toEqual([]);
  });
});
