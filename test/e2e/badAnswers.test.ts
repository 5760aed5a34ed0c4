import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

// Slow, wrong, twice, nowhere: what goes wrong between a page and its program, told in plain words, with what is typed kept.
describe.skipIf(browserPath === undefined)('what goes wrong on the way (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });
  /** A page of a browser of its own, in which `script` runs before anything else. */
  const open = async (path: string, script = ''): Promise<void> => {
    await context?.close();
    context = await browser.newContext();
    await workbench.letIn(context);
    await context.addInitScript(script);
    page = await context.newPage();
    await page.goto(`${workbench.address}${path}`);
  };
  const addPlate = async (title: string, on = page): Promise<void> => {
    await on.getByRole('button', { name: 'Add a plate' }).click();
    await titleOn(on).fill(title);
  };
  const titleOn = (on: Page) => on.getByLabel(/As it reads in a sentence/);
  const save = (on = page) => on.getByRole('button', { name: 'Save the plate' });

  test('[WEB-22] a slow answer: the screen says that it still reads, a button is busy, two presses send one plate', {
    timeout: 120_000,
  }, async () => {
    await open('/data');
    const slow = async (milliseconds: number) => {
      await new Promise(done => setTimeout(done, milliseconds));
    };
    let sent = 0;
    await page.route('**/api/plates', async route => {
      await slow(8_000);
      await route.continue();
    });
    await page.route('**/api/plates/*', async route => {
      if (route.request().method() === 'PUT') sent++;
      await slow(1_500);
      await route.continue();
    });
    await page.getByRole('link', { name: 'Plates' }).click();
    await page.getByText('Reading …').waitFor();
    await page.getByText('Still reading. It takes longer than usual; what you typed stays.').waitFor({ timeout: 9_000 });
    await page.getByRole('article').first().waitFor({ timeout: 20_000 });
    await page.unroute('**/api/plates');
    await addPlate('a slow plate');
    await save().dblclick();
    expect(await save().isDisabled()).toBe(true);
    expect(await save().getAttribute('aria-busy')).toBe('true');
    await page.getByRole('heading', { name: 'A slow plate' }).waitFor();
    expect(sent).toBe(1);
  });

  test('[WEB-22] a browser that takes itself for offline still reads and saves: the program is on this computer', {
    timeout: 60_000,
  }, async () => {
    await open('/data');
    await page.getByRole('heading', { name: 'Daily copies' }).waitFor();
    await page.evaluate("dispatchEvent(new Event('offline'))");
    await page.getByRole('link', { name: 'Plates' }).click();
    await page.getByRole('article').first().waitFor();
    await addPlate('a plate on a train');
    await save().click();
    await page.getByRole('heading', { name: 'A plate on a train' }).waitFor();
  });

  test.each([
    ['a page of another program', { status: 502, contentType: 'text/html', body: '<h1>Bad gateway</h1>' }, 'The answer cannot be read.'],
    ['an empty answer', { status: 200, body: '' }, 'The answer cannot be read.'],
    [
      'a fault',
      {
        status: 500,
        contentType: 'application/problem+json',
        body: JSON.stringify({
          title: 'Platewright made a mistake',
          detail: 'Note the number 1f.',
          nextStep: 'Try again.',
          code: 'program-fault',
        }),
      },
      'Platewright made a mistake.',
    ],
  ])('[WEB-23] %s, while reading and while saving: told, and what is typed stays', { timeout: 90_000 }, async (_, answered, words) => {
    await open('/data');
    await page.route('**/api/plates', route => route.fulfill(answered));
    await page.getByRole('link', { name: 'Plates' }).click();
    await page.getByRole('alert').getByText(words).waitFor();
    await page.getByText(/^Next: /).waitFor();
    expect(await violationsOf(page)).toEqual([]);
    await page.unroute('**/api/plates');
    await page.reload();
    await page.route('**/api/plates/*', route => route.fulfill(answered));
    await addPlate('a plate of its own');
    await save().click();
    await page.getByRole('alert').getByText(words).waitFor();
    expect(await titleOn(page).inputValue()).toBe('a plate of its own');
    await page.unroute('**/api/plates/*');
    await page.getByRole('button', { name: 'Cancel' }).click();
  });

  test('[WEB-25] one form in two windows: the second is told, and who saves last is told too; nothing typed goes', {
    timeout: 90_000,
  }, async () => {
    await open('/plates');
    await addPlate('a plate for two');
    await save().click();
    const change = { name: 'Change the plate a plate for two' };
    await page.getByRole('button', change).click();
    await titleOn(page).fill('a plate for three');
    const second = await context.newPage();
    await second.goto(`${workbench.address}/plates`);
    await second.getByRole('button', change).click();
    await second.getByText('This form is open in another window too.').waitFor();
    expect(await page.getByText('This form is open in another window too.').count()).toBe(0);
    expect(await titleOn(second).inputValue()).toBe('a plate for two');
    await titleOn(second).fill('a plate for four');
    await save(second).click();
    await second.getByRole('heading', { name: 'A plate for four' }).waitFor();
    await save().click();
    await page.getByRole('alert').getByText('Somebody else changed this.').waitFor();
    expect(await titleOn(page).inputValue()).toBe('a plate for three');
    await page.reload();
    await page.getByRole('button', { name: 'Change the plate a plate for four' }).click();
    // What is saved is another than what it was typed on: the person decides.
    await page.getByText(/is not filled in: what is saved was changed since then/).waitFor();
    expect(await titleOn(page).inputValue()).toBe('a plate for four');
    await page.getByRole('button', { name: 'Fill it in' }).click();
    expect(await titleOn(page).inputValue()).toBe('a plate for three');
  });

  const notKept = () => page.getByText(/What you type cannot be kept before it is saved/);
  test.each([
    ['full', "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"],
    ['forbidden', "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })"],
    ['without locks', "Object.defineProperty(Navigator.prototype, 'locks', { get: () => undefined })"],
  ])('[WEB-26] a storage that is %s: the page works, and a form says that it keeps nothing', { timeout: 60_000 }, async (_, script) => {
    await open('/plates', script);
    const complaints = complaintsOf(page);
    const theme = () => page.evaluate('document.documentElement.dataset.theme');
    const before = await theme();
    await page.getByRole('button', { name: 'Light / dark' }).click();
    expect(await theme()).not.toBe(before);
    await addPlate('a plate without a draft');
    await notKept().waitFor();
    await save().click();
    await page.getByRole('heading', { name: 'A plate without a draft' }).first().waitFor();
    expect(complaints).toEqual([]);
  });

  test('[WEB-27] an address that leads nowhere says so, with the way back; screens have titles', { timeout: 60_000 }, async () => {
    await open('/plaits/of/hair');
    await page.getByRole('heading', { level: 1, name: 'There is no such page' }).waitFor();
    expect(await page.title()).toBe('There is no such page · Platewright');
    expect(await violationsOf(page)).toEqual([]);
    for (const [link, heading] of [
      ['Data', 'Data'],
      ['Calculators', 'Calculators'],
      ['Body mass index', 'Body mass index'],
    ] as const) {
      await page.getByRole('link', { name: link, exact: true }).click();
      await page.getByRole('heading', { level: 1, name: heading }).waitFor();
      expect(await page.title()).toBe(`${heading} · Platewright`);
    }
    await page.goto(`${workbench.address}/plaits`);
    // From anywhere, by keyboard alone.
    await page.getByRole('heading', { level: 1, name: 'There is no such page' }).waitFor();
    await page.keyboard.press('Control+K');
    await page.keyboard.type('go to plates');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Plates' }).waitFor();
    await page.goBack();
    await page.getByRole('link', { name: 'begin with the survey' }).click();
    await page.getByRole('button', { name: /^fits \d/ }).waitFor();
  });

  test('[WEB-20] a label that is half typed is back after a reload, and gone when it is saved', { timeout: 60_000 }, async () => {
    await open('/data');
    const name = () => page.getByLabel('Name of the food');
    await name().fill('Half a loaf');
    await page.getByLabel('Sodium (mg)').fill('plenty');
    // What cannot be read is told beside its line.
    await page.getByText(/^Found plenty, expected /).waitFor();
    expect(await page.getByLabel('Sodium (mg)').getAttribute('aria-invalid')).toBe('true');
    await page.reload();
    await page.getByText(/and did not save is back/).waitFor();
    expect(await name().inputValue()).toBe('Half a loaf');
    expect(await page.getByLabel('Sodium (mg)').inputValue()).toBe('plenty');
    await page.getByLabel('Sodium (mg)').fill('120');
    await page.getByRole('button', { name: 'Save the label' }).click();
    await page.getByRole('link', { name: 'Half a loaf' }).waitFor();
    // The next one begins with this one, and is no draft.
    expect(await name().inputValue()).toBe('Half a loaf');
    expect(await page.getByText(/and did not save is back/).count()).toBe(0);
    await page.reload();
    await page.getByRole('heading', { name: 'Type one label' }).waitFor();
    await page.getByText('Nothing to look at so far.').waitFor();
    expect(await name().inputValue()).toBe('');
  });
});
