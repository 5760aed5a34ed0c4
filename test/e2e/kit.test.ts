import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

// Actions, fields, drafts and tables on the page that shows them, in a real Chromium.
describe.skipIf(browserPath === undefined)('the kit in a browser (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let complaints: readonly string[] = [];

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });
  beforeEach(async () => {
    await context?.close();
    context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    await workbench.letIn(context);
    page = await open();
    complaints = complaintsOf(page);
  });

  async function open(): Promise<Page> {
    const opened = await context.newPage();
    await opened.goto(`${workbench.address}/pieces`);
    await opened.getByRole('heading', { name: 'Fields' }).waitFor();
    return opened;
  }
  const nameOfShelf = (on = page) => on.getByRole('textbox', { name: 'Name of the shelf' });
  const form = (on = page) => on.getByRole('form', { name: 'A shelf' });
  const focusedLabel = () => page.evaluate('document.activeElement.labels?.[0]?.textContent ?? document.activeElement.textContent');
  const kept = () => page.evaluate("localStorage.getItem('platewright-draft pieces')");

  test('[WEB-2] an action is done by its button, by its keys and from the palette, and not while it is impossible', async () => {
    const done = page.getByText('Done:');
    await page.getByRole('button', { name: 'Turn the pot' }).click();
    expect(await done.textContent()).toBe('Done: Turn the pot.');
    await page.keyboard.press('Alt+w');
    expect(await done.textContent()).toBe('Done: Water the plant.');
    expect(await page.getByRole('button', { name: 'Cut a flower' }).isDisabled()).toBe(true);
    await page.keyboard.press('Control+k');
    const palette = page.getByRole('dialog', { name: 'What can be done here' });
    const options = palette.getByRole('option');
    await palette.getByRole('combobox').fill('pot');
    expect(await options.allTextContents()).toEqual(['Turn the pot']);
    await page.keyboard.press('Enter');
    await palette.waitFor({ state: 'detached' });
    await page.getByText('Done: Turn the pot.').waitFor();
    // Keys that are meant for an open dialog do nothing behind it.
    await page.keyboard.press('Control+k');
    await palette.waitFor();
    await page.keyboard.press('Alt+w');
    expect(await done.textContent()).toBe('Done: Turn the pot.');
  });

  test('[WEB-2] what cannot be brought back is asked about first, and the key that is pressed next does nothing', async () => {
    await page.getByRole('button', { name: 'Throw it away' }).press('Enter');
    expect(await focusedLabel()).toBe('No');
    await page.keyboard.press('Enter');
    expect(await page.getByText('Done:').textContent()).toBe('Done: nothing yet.');
    await page.getByRole('button', { name: 'Throw it away' }).click();
    await page.getByRole('button', { name: 'Throw it away' }).click();
    expect(await page.getByText('Done:').textContent()).toBe('Done: Throw it away.');
  });

  test('[WEB-3] entries are added and taken out by keyboard, and the focus goes along', async () => {
    await page.getByRole('button', { name: 'Add a board' }).press('Enter');
    await expect.poll(focusedLabel).toBe('Board');
    await page.keyboard.type('bottom');
    await page.getByRole('button', { name: 'Take out the board top' }).press('Enter');
    expect(await focusedLabel()).toBe('Add a board');
    expect(await page.getByRole('textbox', { name: 'Board', exact: true }).inputValue()).toBe('bottom');
    // What is wrong stands beside its field and is tied to it.
    const height = page.getByRole('spinbutton', { name: 'Height, cm' });
    const noteId = await height.getAttribute('aria-describedby');
    expect(await page.locator(`[id="${noteId}"]`).textContent()).toBe('A board stands at 20 to 160.');
  });

  test('[PCS-5] a number that is only begun is told, since it counts as none', async () => {
    const width = page.getByRole('spinbutton', { name: 'Width, cm' });
    const told = page.getByText('This is no number yet: write it to its end, or empty the field.');
    await width.fill('');
    await width.pressSequentially('7e');
    await nameOfShelf().focus();
    await told.waitFor();
    expect(await width.getAttribute('aria-invalid')).toBe('true');
    await width.press('End');
    await width.pressSequentially('1');
    expect([await told.count(), await width.inputValue()]).toEqual([0, '7e1']);
  });

  test('[WEB-4] what is typed is there again after a reload, until it is saved', async () => {
    await nameOfShelf().fill('books');
    await page.getByRole('checkbox', { name: 'green' }).check();
    await page.getByRole('button', { name: 'Add a board' }).click();
    await expect.poll(kept, { timeout: 10_000 }).toContain('green');
    // The last word is typed in the moment before the page goes.
    await page.getByRole('textbox', { name: 'About it' }).fill('by the window');
    await page.reload();
    await form().getByText('did not save is back').waitFor();
    expect(await nameOfShelf().inputValue()).toBe('books');
    expect(await page.getByRole('checkbox', { name: 'green' }).isChecked()).toBe(true);
    expect(await page.getByRole('textbox', { name: 'Board', exact: true }).count()).toBe(2);
    expect(await page.getByRole('textbox', { name: 'About it' }).inputValue()).toBe('by the window');
    await page.keyboard.press('Control+s');
    await expect.poll(kept, { timeout: 10_000 }).toBeNull();
    await page.reload();
    await nameOfShelf().waitFor();
    await page.waitForTimeout(600);
    expect([await nameOfShelf().inputValue(), await form().getByText('is back').count()]).toEqual(['', 0]);
  });

  test('[WEB-4] starting over fills the form as it began', async () => {
    await nameOfShelf().fill('books');
    await expect.poll(kept, { timeout: 10_000 }).toContain('books');
    await page.reload();
    await form().getByRole('button', { name: 'Start over' }).click();
    expect(await nameOfShelf().inputValue()).toBe('');
    await expect.poll(kept, { timeout: 10_000 }).toBeNull();
  });

  test('[WEB-4] a second window with the same form is told, and the first one keeps its draft', async () => {
    await nameOfShelf().fill('books');
    await expect.poll(kept, { timeout: 10_000 }).toContain('books');
    const second = await open();
    await form(second).getByText('open in another window too').waitFor();
    await nameOfShelf(second).fill('shoes');
    await second.waitForTimeout(600);
    expect(await kept()).toContain('books');
    await page.close();
    await second.reload();
    await form(second).getByText('did not save is back').waitFor();
    expect(await nameOfShelf(second).inputValue()).toBe('books');
  });

  test('[WEB-4] a draft of an earlier form is shown and not filled in', async () => {
    await page.evaluate(
      `localStorage.setItem('platewright-draft pieces', JSON.stringify({ at: '2026-03-05T14:02:00Z', values: { title: 'books' } }))`,
    );
    await page.reload();
    await form().getByText('does not fit this form any more').waitFor();
    expect(await nameOfShelf().inputValue()).toBe('');
    await form().getByText('What was typed').click();
    expect(await form().getByText('"title": "books"').isVisible()).toBe(true);
    await form().getByRole('button', { name: 'Forget it' }).click();
    await expect.poll(kept, { timeout: 10_000 }).toBeNull();
  });

  test('[WEB-5] a heading sorts, words narrow, arrow keys pick; of thousands of rows those in view exist', async () => {
    const many = page.getByRole('table', { name: 'Many boxes' });
    expect(Number(await many.getAttribute('aria-rowcount'))).toBe(5_001);
    expect(await many.getByRole('row').count()).toBeLessThan(60);
    await many.getByRole('button', { name: 'Weight' }).click();
    expect(await many.getByRole('columnheader', { name: 'Weight' }).getAttribute('aria-sort')).toBe('ascending');
    expect(await many.getByRole('row').nth(1).textContent()).toContain('0 kg');
    await page.getByRole('searchbox', { name: 'Find in this table' }).fill('box 4999 attic');
    await page.getByText('1 of 5000').waitFor();
    expect(await many.getByRole('row').nth(1).textContent()).toContain('Box 4999');
    await page.getByRole('searchbox', { name: 'Find in this table' }).fill('');
    await page.getByRole('region', { name: 'Many boxes' }).focus();
    for (let step = 0; step < 15; step += 1) await page.keyboard.press('PageDown');
    const picked = many.getByRole('row', { selected: true });
    expect(await picked.count()).toBe(1);
    expect(Number(await picked.getAttribute('aria-rowindex'))).toBe(2 + 119);
    expect(await picked.evaluate(row => row.getBoundingClientRect().top < 900 && row.getBoundingClientRect().bottom > 0)).toBe(true);
  });

  test('[WEB-5] on paper every row stands, and what is only pressed does not', async () => {
    await page.emulateMedia({ media: 'print' });
    const many = page.getByRole('table', { name: 'Many boxes' });
    await expect.poll(() => many.getByRole('row').count(), { timeout: 20_000 }).toBe(5_001);
    expect(await page.getByRole('button', { name: 'Turn the pot' }).isVisible()).toBe(false);
  });

  test('[WEB-1] a page that has just become narrow has no sideways scroll, before its tables are laid out for it', async () => {
    const other = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    await workbench.letIn(other);
    const narrow = await other.newPage();
    // A table hears of its room after the page is laid out: here never.
    await narrow.addInitScript('ResizeObserver = class { observe() {} unobserve() {} disconnect() {} }');
    for (const path of ['/pieces', '/clients']) {
      await narrow.setViewportSize({ width: 1280, height: 800 });
      await narrow.goto(`${workbench.address}${path}`);
      await narrow.getByRole('table').first().waitFor();
      await narrow.setViewportSize({ width: 320, height: 800 });
      expect([path, await narrow.evaluate('document.documentElement.scrollWidth')]).toEqual([path, 320]);
    }
    await other.close();
  });

  test('[WEB-1] every piece keeps WCAG 2.2 A and AA, light and dark, and stays inside 320 px', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const other = await browser.newContext({ colorScheme, viewport: { width: 320, height: 800 } });
      await workbench.letIn(other);
      const narrow = await other.newPage();
      await narrow.goto(`${workbench.address}/pieces`);
      await narrow.getByRole('heading', { name: 'Fields' }).waitFor();
      expect(await violationsOf(narrow)).toEqual([]);
      expect(await narrow.evaluate('document.documentElement.scrollWidth')).toBe(320);
      await other.close();
    }
    expect(complaints).toEqual([]);
  }, 120_000);
});
