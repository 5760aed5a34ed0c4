import type { Browser, Page, Route } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, launchBrowser, removeFolder, startWorkbench, type Workbench } from './workbench.ts';

// What was typed on one state, when another one is saved meanwhile or the program answers late, badly or not at all.
describe.skipIf(browserPath === undefined)(
  'drafts and what happens meanwhile (skipped where no Chromium-family browser is installed)',
  () => {
    let workbench: Workbench;
    let browser: Browser;
    let page: Page;
    let clientPath: string;

    beforeAll(async () => {
      workbench = await startWorkbench();
      browser = await launchBrowser();
      page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
      page.setDefaultTimeout(10_000);
      await workbench.letIn(page.context());
      const clients = (await read('/api/clients')) as readonly { readonly id: string; readonly name: string }[];
      clientPath = `/clients/${clients.find(({ name }) => name.startsWith('E. P.'))!.id}`;
    }, 120_000);
    afterAll(async () => {
      await browser?.close();
      await workbench?.stop();
      if (workbench !== undefined) removeFolder(workbench.folder);
    });

    const read = async (path: string): Promise<unknown> => (await workbench.fetch(path)).json();
    const send = async (method: string, path: string, body: unknown): Promise<number> =>
      (
        await workbench.fetch(path, {
          method,
          headers: { 'content-type': 'application/json', origin: workbench.address },
          body: JSON.stringify(body),
        })
      ).status;
    const button = (name: string | RegExp) => page.getByRole('button', { name });
    const notFilledIn = () => page.getByText(/is not filled in: what is saved was changed since then/);
    const openClient = async (): Promise<void> => {
      await page.goto(`${workbench.address}${clientPath}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
    };
    const value = () => page.getByRole('spinbutton', { name: 'Value' }).first();
    const keptValue = async (): Promise<unknown> => {
      const { draft } = (await read(`/api${clientPath}/drafts/results`)) as {
        readonly draft: { readonly value: { readonly values: { readonly labs: readonly { readonly value: string }[] } } } | null;
      };
      return draft?.value.values.labs[0]?.value;
    };
    const potassium = async (): Promise<readonly number[]> => {
      const { assessment } = (await read(`/api${clientPath}`)) as {
        readonly assessment: { readonly labs: readonly { readonly analyte: string; readonly value: number }[] };
      };
      return assessment.labs.filter(({ analyte }) => analyte === 'potassium').map(one => one.value);
    };
    const addPotassium = async (figure: number): Promise<void> => {
      const { version } = (await read(`/api${clientPath}`)) as { readonly version: number };
      const takenOn = new Date().toISOString().slice(0, 10);
      const labs = [{ analyte: 'potassium', value: figure, unit: 'mmol/L', takenOn }];
      expect(await send('POST', `/api${clientPath}/results`, { version, labs, weighings: [] })).toBe(200);
    };

    test('[WEB-4] a plate that was saved by somebody else meanwhile is not overwritten by an older draft unseen', async () => {
      type Kept = {
        readonly plate: { readonly id: string; readonly title: string };
        readonly version: number;
        readonly isBuiltIn: boolean;
      };
      const [own] = ((await read('/api/plates')) as readonly Kept[]).filter(({ isBuiltIn }) => !isBuiltIn);
      const { plate, version } = own!;
      const title = page.getByRole('textbox', { name: /^As it reads in a sentence/ });
      await page.goto(`${workbench.address}/plates`);
      await button(`Change the plate ${plate.title}`).click();
      await title.fill('half typed');
      await expect.poll(() => page.evaluate(`localStorage.getItem('platewright-draft plate ${plate.id}')`)).toMatch(/half typed/);
      expect(await send('PUT', `/api/plates/${plate.id}`, { plate: { ...plate, title: 'theirs' }, version })).toBe(200);
      await page.reload();
      await button('Change the plate theirs').click();
      await notFilledIn().waitFor();
      expect(await title.inputValue()).toBe('theirs');
      // Left and opened again it is still there, and filled in when that is asked for.
      await button('Cancel').click();
      await title.waitFor({ state: 'detached' });
      await button('Change the plate theirs').click();
      await button('Fill it in').click();
      expect(await title.inputValue()).toBe('half typed');
      await button('Cancel').click();
      await title.waitFor({ state: 'detached' });
      expect(await page.evaluate(`localStorage.getItem('platewright-draft plate ${plate.id}')`)).toBeNull();
    }, 60_000);

    test('[WEB-4] [WEB-25] results that came in while an assessment lay half typed are not left out of it unseen', async () => {
      await openClient();
      await button('New assessment').click();
      const urine = page.getByRole('spinbutton', { name: 'Urine, mL a day' });
      await Promise.all([page.waitForResponse(answer => answer.request().method() === 'PUT'), urine.fill('431')]);
      await addPotassium(5.9);
      // In the form that stands open the client is read anew, as when the window is shown again.
      await page.evaluate("document.dispatchEvent(new Event('visibilitychange')); window.dispatchEvent(new Event('focus'))");
      await page.waitForTimeout(2_500);
      await page.evaluate("document.dispatchEvent(new Event('visibilitychange')); window.dispatchEvent(new Event('focus'))");
      await page.waitForTimeout(1_000);
      await button('Keep the assessment').click();
      await page.getByText('Somebody else changed this').waitFor();
      expect(await urine.inputValue()).toBe('431');
      expect(await potassium()).toContain(5.9);
      await page.reload();
      await button('Go on with the assessment').click();
      await notFilledIn().waitFor();
      expect(await urine.inputValue()).not.toBe('431');
      await button('Forget it').click();
      await button('Keep the assessment').click();
      await urine.waitFor({ state: 'detached' });
      expect(await potassium()).toContain(5.9);
    }, 60_000);

    test('[WEB-4] what is typed before the draft has been read does not take its place', async () => {
      await openClient();
      await button('Add results').click();
      await Promise.all([page.waitForResponse(answer => answer.request().method() === 'PUT'), value().fill('4.4')]);
      await page.reload();
      const late = async (route: Route): Promise<void> => {
        await page.waitForTimeout(1_500);
        await route.continue();
      };
      await page.route('**/drafts/results', late);
      await button('Go on with the results').click();
      await value().fill('5');
      await notFilledIn().waitFor();
      await page.waitForTimeout(800);
      expect(await keptValue()).toBe('4.4');
      await page.unroute('**/drafts/results', late);
      await button('Fill it in').click();
      expect(await value().inputValue()).toBe('4.4');
      await button('Cancel').click();
      await expect.poll(keptValue).toBeUndefined();
    }, 60_000);

    test.each(['DELETE', 'PUT'])(
      '[WEB-4] typing is kept again after the answer to one %s was lost',
      async method => {
        await openClient();
        await button('Add results').click();
        await Promise.all([page.waitForResponse(answer => answer.request().method() === 'PUT'), value().fill('4.1')]);
        let lost = 0;
        const lose = async (route: Route): Promise<void> => {
          if (route.request().method() !== method || lost > 0) return route.continue();
          lost++;
          // The program has done what was asked for; for DELETE it has not even heard of it.
          if (method === 'PUT') await route.fetch();
          await route.abort();
        };
        await page.route('**/drafts/results*', lose);
        await value().fill(method === 'PUT' ? '4.2' : '');
        await expect.poll(() => lost).toBe(1);
        await page.waitForTimeout(300);
        await value().fill('4.3');
        await expect.poll(keptValue).toBe('4.3');
        await expect.poll(() => page.getByText(/cannot be kept before it is saved/).count()).toBe(0);
        await page.unroute('**/drafts/results*', lose);
        await button('Cancel').click();
        await expect.poll(keptValue).toBeUndefined();
      },
      60_000,
    );

    test('[WEB-4] a program that does not answer is told, and once it does what is typed is kept without another key', async () => {
      await openClient();
      await button('Add results').click();
      await Promise.all([page.waitForResponse(answer => answer.request().method() === 'PUT'), value().fill('4.1')]);
      const fail = (route: Route): Promise<void> => (route.request().method() === 'PUT' ? route.abort() : route.continue());
      await page.route('**/drafts/results*', fail);
      await value().fill('4.2');
      await page.getByText('What you type is kept as soon as the program answers.').waitFor();
      expect(await page.getByText(/storage is full/).count()).toBe(0);
      await page.unroute('**/drafts/results*', fail);
      await expect.poll(keptValue, { timeout: 20_000 }).toBe('4.2');
      await page.getByText('What you type is kept as soon as the program answers.').waitFor({ state: 'detached' });
      await button('Cancel').click();
      await expect.poll(keptValue).toBeUndefined();
    }, 60_000);

    test('[WEB-3] text that is no number yet goes with its row, and not into the next one', async () => {
      await openClient();
      await button('Add results').click();
      for (let more = 0; more < 2; more++) await button('Add a result').click();
      const values = page.getByRole('spinbutton', { name: 'Value' });
      await values.nth(1).pressSequentially('1e');
      await button(/^Take out/)
        .nth(1)
        .click();
      await expect.poll(() => values.count()).toBe(2);
      const isHalfTyped = (field: unknown): boolean => (field as { readonly validity: { readonly badInput: boolean } }).validity.badInput;
      expect(await values.nth(1).evaluate(isHalfTyped)).toBe(false);
      await values.nth(1).pressSequentially('2e');
      await button(/^Take out/)
        .first()
        .click();
      await expect.poll(() => values.count()).toBe(1);
      expect(await values.first().evaluate(isHalfTyped)).toBe(true);
      await button('Cancel').click();
    }, 60_000);

    test('[WEB-4] what is typed for one label is not carried into the form of another', async () => {
      const [food] = (await read('/api/foods')) as readonly { readonly id: string }[];
      await page.goto(`${workbench.address}/foods/${food!.id}`);
      await button('Add a newer label').first().click();
      const calories = page.getByRole('textbox', { name: /^Calories/ });
      const before = await calories.inputValue();
      await calories.fill('777');
      await button('Correct a misread figure').first().click();
      await page.getByRole('heading', { name: 'Correct a misread figure' }).waitFor();
      expect(await calories.inputValue()).toBe(before);
      await button('Add a newer label').first().click();
      await page.getByText(/did not save is back/).waitFor();
      expect(await calories.inputValue()).toBe('777');
    }, 60_000);
  },
);
