import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, launchBrowser, ownCommand, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

// The program goes and comes back, as it was or renewed, while a page of it is open.
describe.skipIf(browserPath === undefined)(
  'the program goes under an open page (skipped where no Chromium-family browser is installed)',
  () => {
    let workbench: Workbench;
    let browser: Browser;
    let context: BrowserContext;
    let page: Page;
    let renewed = '';

    beforeAll(async () => {
      workbench = await startWorkbench();
      browser = await launchBrowser();
      context = await browser.newContext();
      page = await context.newPage();
    }, 120_000);
    afterAll(async () => {
      await browser?.close();
      await workbench?.stop();
      if (workbench !== undefined) removeFolder(workbench.folder);
      if (renewed !== '') removeFolder(renewed);
    });
    const open = async (path: string): Promise<void> => {
      await workbench.letIn(context);
      await page.goto(`${workbench.address}${path}`);
    };
    /** Starts it again at the same address, as `npm start` does; its new address is opened in the same browser. */
    const startAgain = async (command: readonly string[]): Promise<void> => {
      workbench = await startWorkbench(workbench.folder, { PORT: new URL(workbench.address).port }, { command });
      await workbench.letIn(context);
    };
    const rail = (name: string) => page.getByRole('navigation', { name: 'Workbench' }).getByRole('link', { name });
    const stopped = () => page.getByText('The program is stopped, or hangs.');
    const title = () => page.getByLabel(/As it reads in a sentence/);

    test('[WEB-21] it is stopped: that is told, what is typed stays, a screen that is not there is tried again; nothing is loaded anew', {
      timeout: 180_000,
    }, async () => {
      await open('/plates');
      await page.getByRole('button', { name: 'Add a plate' }).click();
      await title().fill('two slices of oat bread');
      // Goes with the page, where it is loaded anew.
      await page.evaluate('window.isSamePage = true');
      await workbench.stop('SIGKILL');
      await stopped().waitFor();
      await page.getByRole('button', { name: 'Save the plate' }).click();
      // Above the buttons; the search for companions says it too.
      await page.getByText('The program does not answer.').last().waitFor();
      expect(await title().inputValue()).toBe('two slices of oat bread');
      expect(await page.getByRole('article').count()).toBeGreaterThan(1);
      await rail('Yardsticks').click();
      await page.getByRole('heading', { level: 1, name: 'This screen cannot be shown' }).waitFor();
      expect(await page.title()).toBe('This screen cannot be shown · Platewright');
      expect(await page.getByRole('button', { name: 'Reload this page' }).count()).toBe(0);
      expect(await violationsOf(page)).toEqual([]);
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByRole('heading', { level: 1, name: 'This screen cannot be shown' }).waitFor();
      await startAgain(ownCommand);
      await stopped().waitFor({ state: 'detached' });
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByRole('heading', { level: 1, name: 'Yardsticks' }).waitFor();
      await rail('Plates').click();
      await page.getByRole('button', { name: 'Add a plate' }).click();
      await page.getByText(/and did not save is back/).waitFor();
      expect(await title().inputValue()).toBe('two slices of oat bread');
      await page.getByRole('button', { name: 'Save the plate' }).click();
      await page.getByRole('heading', { name: 'Two slices of oat bread' }).waitFor();
      expect(await page.evaluate('window.isSamePage')).toBe(true);
    });

    test('[WEB-24] it was renewed: a screen whose file is gone and a line on every screen say so; what is typed comes back', {
      timeout: 180_000,
    }, async () => {
      await open('/plates');
      await page.getByRole('button', { name: 'Add a plate' }).click();
      await title().fill('half a plate of noodles');
      renewed = renewedProgram();
      await workbench.stop('SIGKILL');
      await stopped().waitFor();
      await startAgain([process.execPath, join(renewed, 'src/cli/main.ts'), 'start']);
      await page.getByText('The program was renewed.', { exact: true }).waitFor();
      expect(await title().inputValue()).toBe('half a plate of noodles');
      await rail('Guides').click();
      await page.getByText('The screen is not there any more.').waitFor();
      expect(await violationsOf(page)).toEqual([]);
      await page.getByRole('button', { name: 'Reload this page' }).first().click();
      await page.getByRole('heading', { level: 1, name: 'Guides' }).waitFor();
      expect(await page.getByText('The program was renewed.', { exact: true }).count()).toBe(0);
      await rail('Plates').click();
      await page.getByRole('button', { name: 'Add a plate' }).click();
      await page.getByText(/and did not save is back/).waitFor();
      expect(await title().inputValue()).toBe('half a plate of noodles');
    });
  },
);

/** The same program with a browser part in which every script has another name, as after an update. */
function renewedProgram(): string {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), 'platewright-renewed-'));
  for (const part of ['src', 'data', 'package.json']) cpSync(join(root, part), join(folder, part), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  const web = join(folder, 'web');
  cpSync(join(root, 'dist', 'web'), web, { recursive: true });
  const assets = join(web, 'assets');
  const names = readdirSync(assets).filter(name => name.endsWith('.js'));
  const rename = (file: string): void => {
    const text = names.reduce((before, name) => before.replaceAll(name, `renewed-${name}`), readFileSync(file, 'utf8'));
    writeFileSync(file, text);
  };
  rename(join(web, 'index.html'));
  for (const name of names) {
    rename(join(assets, name));
    renameSync(join(assets, name), join(assets, `renewed-${name}`));
  }
  return folder;
}
