import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type CuttableLine, cuttableLine } from './cuttableLine.ts';
import { browserPath, launchBrowser, ownCommand, removeFolder, startWorkbench, type Workbench } from './workbench.ts';

const passphrase = 'seven herons by the weir';
const client = 'J. K. (demo)';
const wait = (milliseconds: number): Promise<void> => new Promise(done => setTimeout(done, milliseconds));

// The lock in a real browser: two profiles, two tabs, the real clock, which one test puts forward.
const [node = '', ...program] = ownCommand;
const command = [node, '--import', new URL('clockAhead.fixture.ts', import.meta.url).href, ...program];
describe.skipIf(browserPath === undefined)('the lock in a browser (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let line: CuttableLine;
  let browser: Browser;
  let profile: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    workbench = await startWorkbench(undefined, {}, { command });
    line = await cuttableLine(workbench.address);
    browser = await launchBrowser();
    profile = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    await workbench.letIn(profile);
    page = await profile.newPage();
    await open(page, '/clients');
    await page.getByText(/^Not locked/).click();
    await page.getByLabel('New passphrase, 15 characters or more', { exact: true }).fill(passphrase);
    await page.getByLabel('New passphrase again', { exact: true }).fill('seven herons by the wire');
    expect(await page.getByRole('button', { name: 'Set the passphrase' }).isDisabled()).toBe(true);
    await page.getByLabel('New passphrase again', { exact: true }).fill(passphrase);
    await page.getByRole('button', { name: 'Set the passphrase' }).click();
    await page.getByRole('button', { name: 'Lock now' }).waitFor();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    line?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });

  const open = (on: Page, path: string, address = workbench.address) => on.goto(`${address}${path}`);
  const locked = (on: Page) => on.getByRole('heading', { name: 'Client data is locked' });
  async function unlock(on: Page): Promise<void> {
    await on.getByLabel('Passphrase', { exact: true }).fill(passphrase);
    await on.getByRole('button', { name: 'Open', exact: true }).click();
    await on.getByRole('link', { name: client }).waitFor();
  }
  async function openClient(on: Page, address = workbench.address): Promise<void> {
    await open(on, '/clients', address);
    await on.getByRole('link', { name: client }).click();
    await on.getByRole('heading', { level: 1, name: client }).waitFor();
  }
  /** Nothing of the client in the page, its title, its address or what it keeps. */
  async function expectNothing(on: Page): Promise<void> {
    await locked(on).waitFor({ timeout: 5_000 });
    expect(await on.content()).not.toContain('J. K.');
    expect([new URL(on.url()).pathname, await on.title()]).toEqual(['/clients', 'Clients · Platewright']);
    expect(await on.getByRole('dialog').count()).toBe(0);
    expect(await on.evaluate('JSON.stringify([{ ...localStorage }, { ...sessionStorage }])')).not.toMatch(/J\. K\.|clients/);
  }

  test('[SRV-23] locked in one tab, every window of every profile is cleared at once: drafts, dialogs, title and address', async () => {
    const tab = await profile.newPage();
    await openClient(tab);
    await tab.getByRole('button', { name: 'New assessment' }).click();
    const age = tab.getByRole('spinbutton', { name: 'or age in years' });
    await Promise.all([
      tab.waitForResponse(answer => answer.url().endsWith('/drafts/assessment') && answer.request().method() === 'PUT'),
      age.fill('61'),
    ]);
    const second = await browser.newContext();
    await workbench.letIn(second);
    const other = await second.newPage();
    await open(other, '/clients');
    await other.getByRole('button', { name: `Erase ${client}` }).click();
    await other.getByRole('dialog').waitFor();
    await page.bringToFront();
    await page.getByRole('button', { name: 'Lock now' }).click();
    const begun = performance.now();
    for (const on of [tab, other, page]) await expectNothing(on);
    expect(performance.now() - begun).toBeLessThan(5_000);
    // The way back leads to a page that asks for the passphrase.
    await tab.goBack();
    await locked(tab).waitFor();
    expect(await tab.content()).not.toContain('J. K.');
    await unlock(page);
    // Another profile sees that it is open. What was typed lay in the vault, and is back when it is asked for.
    await other.getByRole('link', { name: client }).waitFor();
    await openClient(tab);
    expect(await age.count()).toBe(0);
    await tab.getByRole('button', { name: 'Go on with the assessment' }).click();
    await tab.getByText(/did not save is back/).waitFor();
    expect(await age.inputValue()).toBe('61');
    await tab.getByRole('button', { name: 'Cancel' }).click();
    await age.waitFor({ state: 'detached' });
    await other.context().close();
    await tab.close();
  }, 60_000);

  test('[SRV-23] loading the page again, or closing one of two tabs, locks nothing', async () => {
    const tab = await profile.newPage();
    await open(tab, '/foods');
    await page.reload();
    await tab.close();
    await wait(12_000);
    await page.getByRole('link', { name: client }).waitFor();
    await page.reload();
    await page.getByRole('link', { name: client }).waitFor();
  }, 60_000);

  test('[SRV-25] a blip hides client data and brings it back with what was typed; a longer silence lets it go', async () => {
    const own = await browser.newContext();
    // As seen through the line, the program has another port, and so another cookie.
    await own.request.get(workbench.printed.replace(workbench.address, line.address));
    const far = await own.newPage();
    await openClient(far, line.address);
    await far.getByRole('button', { name: 'New assessment' }).click();
    const age = far.getByRole('spinbutton', { name: 'or age in years' });
    await age.fill('61');
    line.cut();
    await far.getByText(/Client data is hidden/).waitFor();
    expect(await far.getByText('J. K.').first().isVisible()).toBe(false);
    expect(await age.isVisible()).toBe(false);
    line.mend();
    await far.getByText(/Client data is hidden/).waitFor({ state: 'detached' });
    expect(await age.inputValue()).toBe('61');
    line.cut();
    await far.getByText(/Client data was put away/).waitFor({ timeout: 40_000 });
    expect(await far.content()).not.toContain('J. K.');
    line.mend();
    await far.getByRole('heading', { level: 1, name: client }).waitFor({ timeout: 20_000 });
    expect(await age.count()).toBe(0);
    // Locked while nothing is heard: the window shows nothing when it hears again.
    line.cut();
    await far.getByText(/Client data is hidden/).waitFor();
    await page.getByRole('button', { name: 'Lock now' }).click();
    await locked(page).waitFor();
    await unlock(page);
    line.mend();
    await far.getByRole('link', { name: client }).waitFor({ timeout: 20_000 });
    expect(new URL(far.url()).pathname).toBe('/clients');
    await own.close();
  }, 120_000);

  test('[SRV-23] the last window that is closed locks', async () => {
    await page.close();
    await wait(13_000);
    page = await profile.newPage();
    await open(page, '/clients');
    await locked(page).waitFor();
    await unlock(page);
  }, 60_000);

  test('[SRV-22] an erased client is brought back by one press; after the lock no more', async () => {
    const erase = async (): Promise<void> => {
      await page.getByRole('button', { name: `Erase ${client}` }).click();
      await page.getByLabel(`To erase, type: ${client}`).fill(client);
      await page.getByRole('button', { name: 'Erase the client' }).click();
      await page.getByRole('link', { name: client }).waitFor({ state: 'detached' });
    };
    await erase();
    await page.getByRole('button', { name: `Bring ${client} back` }).click();
    await page.getByRole('link', { name: client }).waitFor();
    await erase();
    await page.getByText(`Erased: ${client}`).waitFor();
    await page.getByRole('button', { name: 'Lock now' }).click();
    await locked(page).waitFor();
    await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('link', { name: 'L. O. (demo)' }).waitFor();
    expect(await page.content()).not.toContain('J. K.');
  }, 60_000);

  test('[SRV-24] a minute without a key or a pointer locks, though the screen asks the program meanwhile', async () => {
    await page.getByText('Locked by a passphrase when you leave').click();
    await page.getByLabel(/^Lock after so many minutes/).fill('1');
    await page.getByRole('button', { name: 'Keep the minutes' }).click();
    await page.getByText('Kept.').waitFor();
    // The last touch is told up to ten seconds late.
    await wait(11_000);
    const halfMinuteOn = () => process.kill(workbench.pid, 'SIGUSR2');
    halfMinuteOn();
    expect(await page.evaluate("fetch('/api/clients').then(({ status }) => status)")).toBe(200);
    // It looks every second.
    await wait(2_500);
    expect(await locked(page).count()).toBe(0);
    halfMinuteOn();
    await locked(page).waitFor({ timeout: 10_000 });
  }, 60_000);

  test('[VLT-20] locked, everything is erased with the passphrase alone', async () => {
    await page.getByRole('button', { name: 'Erase every client' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel(/^To erase, type/).fill('erase every client');
    expect(await dialog.getByRole('button', { name: 'Erase every client' }).isDisabled()).toBe(true);
    await dialog.getByLabel('The passphrase', { exact: true }).fill('wrong herons by the weir');
    await dialog.getByRole('button', { name: 'Erase every client' }).click();
    await dialog.getByRole('alert').waitFor();
    await dialog.getByLabel('The passphrase', { exact: true }).fill(passphrase);
    await dialog.getByRole('button', { name: 'Erase every client' }).click();
    await page.getByText(/^Nobody yet/).waitFor();
  });
});
