import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  browserPath,
  complaintsOf,
  launchBrowser,
  removeFolder,
  savedBy,
  startWorkbench,
  violationsOf,
  type Workbench,
} from './workbench.ts';

const passphrase = 'nine otters under the bridge';

// A restore drill: one workbench is filled, its archive is brought into another one that knows nothing of it.
describe.skipIf(browserPath === undefined)('a restore drill (skipped where no Chromium-family browser is installed)', () => {
  let from: Workbench;
  let to: Workbench;
  let browser: Browser;
  const folder = mkdtempSync(join(tmpdir(), 'platewright-drill-'));
  const archive = join(folder, 'archive.zip');

  beforeAll(async () => {
    [from, to, browser] = await Promise.all([startWorkbench(), startWorkbench(), launchBrowser()]);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    for (const workbench of [from, to]) {
      await workbench?.stop();
      if (workbench !== undefined) removeFolder(workbench.folder);
    }
    removeFolder(folder);
  });

  async function dataScreen(workbench: Workbench): Promise<Page> {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
    await workbench.letIn(context);
    const page = await context.newPage();
    await page.goto(`${workbench.address}/data`);
    await page.getByRole('heading', { name: 'Daily copies' }).waitFor();
    return page;
  }
  const json = async <Result>(workbench: Workbench, path: string, init?: RequestInit): Promise<Result> => {
    const response = await workbench.fetch(`/api${path}`, init);
    expect(response.status, path).toBe(200);
    return (await response.json()) as Result;
  };
  const put = (body: unknown, method = 'PUT'): RequestInit => ({
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  interface Food {
    readonly id: string;
    readonly name: string;
  }

  test('[ARC-1] [ARC-30] everything goes into one file on the screen, and comes back in another workbench, clients sealed as they were', async () => {
    await json(from, '/foods', put({ label: { name: 'Barley stew from the weir', panel: { sodiumMg: 123 } } }, 'POST'));
    await json(from, '/clients/passphrase', put({ next: passphrase }));
    const page = await dataScreen(from);
    const complaints = complaintsOf(page);
    await page.getByRole('button', { name: 'Make an archive' }).click();
    await page.getByText(/made and was read back whole/).waitFor({ timeout: 60_000 });
    writeFileSync(archive, await savedBy(page, () => page.getByRole('link', { name: 'Save the file' }).click()));
    expect(await violationsOf(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();

    const other = await dataScreen(to);
    await other.getByLabel('Choose a file to restore').setInputFiles(archive);
    await other.getByText(/read through and whole/).waitFor({ timeout: 60_000 });
    expect(await violationsOf(other)).toEqual([]);
    await other.getByRole('button', { name: 'Restore', exact: true }).click();
    await other.getByText(/^Restored\./).waitFor({ timeout: 60_000 });
    await other.context().close();
    expect(await json<Food[]>(to, '/foods')).toEqual(await json<Food[]>(from, '/foods'));
    expect(await json(to, '/clients/lock')).toMatchObject({ state: 'locked', hasPassphrase: true });
    await json(to, '/clients/lock', put({ open: true, passphrase }, 'POST'));
    await json(from, '/clients/lock', put({ open: true, passphrase }, 'POST'));
    expect(await json(to, '/clients')).toEqual(await json(from, '/clients'));
  }, 180_000);

  test('[ARC-33] after everything was deleted, the daily copy brings it back', async () => {
    const page = await dataScreen(from);
    const made = page.waitForResponse(response => response.url().endsWith('/api/copies') && response.request().method() === 'POST');
    await page.getByRole('button', { name: 'Make a copy now' }).click();
    expect((await made).status()).toBe(200);
    const before = await json<Food[]>(from, '/foods');
    await page.getByLabel(/type: delete everything$/).fill('delete everything');
    await page.getByRole('button', { name: 'Delete everything' }).click();
    await expect.poll(() => json<Food[]>(from, '/foods')).toEqual([]);
    await page.getByText(/^(One copy|\d+ copies)$/).click();
    await page
      .getByRole('button', { name: /^Restore from the copy of/ })
      .first()
      .click();
    await page.getByText(/read through and whole/).waitFor({ timeout: 60_000 });
    await page.getByLabel('The client records too').uncheck();
    await page.getByRole('button', { name: 'Restore', exact: true }).click();
    await page.getByText(/^Restored\./).waitFor({ timeout: 60_000 });
    expect(await json<Food[]>(from, '/foods')).toEqual(before);
    await page.context().close();
  }, 180_000);

  test('[ARC-5] a file that is no archive is told, and nothing is changed', async () => {
    const page = await dataScreen(to);
    const wrong = join(folder, 'wrong.zip');
    writeFileSync(wrong, 'no archive');
    await page.getByLabel('Choose a file to restore').setInputFiles(wrong);
    await page.getByText('Nothing was changed.').waitFor({ timeout: 60_000 });
    await page.getByLabel('Choose a file to restore').setInputFiles(archive);
    await page.getByText(/read through and whole/).waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByText('Choose a file to restore').waitFor();
    await page.context().close();
  }, 120_000);
});
