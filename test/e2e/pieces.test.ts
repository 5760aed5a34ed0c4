import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  browserPath,
  complaintsOf,
  launchBrowser,
  removeFolder,
  startWorkbench,
  violationsOf,
  violationsOfBoth,
  type Workbench,
} from './workbench.ts';

// The pieces that open, on the page that shows them, in a real Chromium.
describe.skipIf(browserPath === undefined)('pieces in a browser (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[] = [];

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    page = await newPage({ viewport: { width: 1280, height: 900 } });
    complaints = complaintsOf(page);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });
  beforeEach(() => open(page));

  async function newPage(options: BrowserContextOptions): Promise<Page> {
    const context = await browser.newContext(options);
    await workbench.letIn(context);
    return context.newPage();
  }
  async function open(on: Page): Promise<void> {
    await on.goto(`${workbench.address}/pieces`);
    await on.getByRole('heading', { name: 'Dialog, menu, combobox, day' }).waitFor();
  }
  const button = (name: string, on = page) => on.getByRole('button', { name, exact: true });
  const field = (name: string, on = page) => on.getByRole('combobox', { name });
  /** Of a list that is open; plain lists have options too. */
  const option = (of: { readonly name?: string; readonly selected?: boolean } = {}, on = page) =>
    on.getByRole('listbox').getByRole('option', of);
  const press = async (...keys: readonly string[]) => {
    for (const key of keys) await page.keyboard.press(key);
  };
  /** What has the focus, by its words or its label. */
  const focused = () =>
    page.evaluate(
      '(document.activeElement.labels?.[0] ?? document.activeElement).textContent.trim() + (document.activeElement === document.body ? "nothing" : "")',
    );
  const isFocused = (what: Locator) => what.evaluate(element => element === element.ownerDocument.activeElement);

  test('[PCS-1] a dialog takes the focus and gives it back; Escape and its buttons close it', async () => {
    await button('Ask').press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Remove the tray?' });
    await dialog.waitFor();
    expect(await isFocused(dialog.getByRole('heading'))).toBe(true);
    await press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await focused()).toBe('Ask');
    await press('Enter', 'Tab');
    expect(await focused()).toBe('Remove the tray');
    await press('Tab', 'Enter');
    await dialog.waitFor({ state: 'detached' });
    expect(await focused()).toBe('Ask');
  });

  test('[PCS-1] Enter in a field sends the form of a dialog, unless what it sends is disabled; paper does not show it', async () => {
    await button('Ask for a name').click();
    const dialog = page.getByRole('dialog', { name: 'Name the shelf' });
    await dialog.waitFor();
    expect(await focused()).toBe('Name');
    await press('Enter');
    expect(await dialog.isVisible()).toBe(true);
    await page.keyboard.type('top');
    await press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await button('Ask').click();
    expect(await page.getByRole('dialog').isVisible()).toBe(true);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('dialog').count()).toBe(0);
    await page.emulateMedia({ media: 'screen' });
  });

  test('[PCS-2] a menu of actions works by keyboard alone', async () => {
    const menu = page.getByRole('menu', { name: 'Actions' });
    await button('Actions').focus();
    await press('ArrowDown');
    await menu.waitFor();
    expect(await button('Actions').getAttribute('aria-expanded')).toBe('true');
    expect(await focused()).toBe('Copy');
    await press('ArrowUp');
    expect(await focused()).toBe('Remove');
    await press('ArrowUp');
    // Over "Put away", which is disabled.
    expect(await focused()).toBe('Print');
    await press('Home');
    expect(await focused()).toBe('Copy');
    await press('End', 'r');
    expect(await focused()).toBe('Rename');
    await press('r');
    expect(await focused()).toBe('Remove');
    await page.waitForTimeout(800);
    await page.keyboard.type('ren');
    expect(await focused()).toBe('Rename');
    await press('Escape');
    await menu.waitFor({ state: 'hidden' });
    expect(await focused()).toBe('Actions');
    await press('Enter', 'ArrowDown', 'Enter');
    await page.getByText('Chosen: Rename.').waitFor();
    expect([await menu.isVisible(), await focused()]).toEqual([false, 'Actions']);
    await press('Enter');
    await menu.waitFor();
    await press('Tab');
    await menu.waitFor({ state: 'hidden' });
  });

  test('[PCS-2] ticks leave their menu open; a press elsewhere closes it', async () => {
    await button('Colors').click();
    const group = page.getByRole('group', { name: 'Also show' });
    await group.waitFor();
    await press('ArrowDown', 'ArrowDown', 'Space', 'g', 'Space');
    await page.getByText('Shown: Blue, Coral, Green.').waitFor();
    await group.getByRole('checkbox', { name: 'Blue' }).uncheck();
    await page.getByText('Shown: Coral, Green.').waitFor();
    expect(await group.getByRole('checkbox', { name: 'Ivory' }).isDisabled()).toBe(true);
    await page.getByRole('heading', { name: 'Dialog, menu' }).click();
    await group.waitFor({ state: 'hidden' });
    expect(await button('Nothing to do').isDisabled()).toBe(true);
  });

  test('[PCS-3] a combobox narrows, says how many match, and chooses by keyboard and by press', async () => {
    const long = field('Of a long list');
    const heard = (words: string) => page.getByRole('status').filter({ hasText: words });
    await long.focus();
    await press('ArrowDown');
    await heard('128 found, the first 100 are shown. Type more to narrow them.').waitFor();
    await page.keyboard.type('lamp');
    await heard('8 found.').waitFor();
    expect(await option().count()).toBe(8);
    await press('ArrowUp', 'ArrowDown', 'ArrowDown');
    const meant = await long.getAttribute('aria-activedescendant');
    expect(await page.locator(`[id="${meant}"]`).textContent()).toBe('Blue lamp without a bulb');
    await press('Enter');
    expect([await long.inputValue(), await long.getAttribute('aria-expanded')]).toEqual(['Blue lamp', 'false']);
    await press('ArrowDown');
    expect(await option({ selected: true }).textContent()).toBe('Blue lamp without a bulb');
    await long.fill('red stool');
    // The only one there is.
    await press('Enter');
    expect(await long.inputValue()).toBe('Red stool');
    await long.fill('violet');
    await option({ name: 'Violet vase' }).click();
    expect([await long.inputValue(), await isFocused(long)]).toEqual(['Violet vase', true]);
  });

  test('[PCS-3] words that are no choice stay and are told; the exact words, or none, are an answer', async () => {
    const long = field('Of a long list');
    await long.fill('zebra');
    await page.getByText('Nothing found.').first().waitFor();
    await press('Tab');
    const told = page.getByText('Nothing is chosen: choose one of the list, or empty the field.');
    await told.waitFor();
    expect([await long.inputValue(), await long.getAttribute('aria-invalid'), await long.evaluate(one => one.matches(':invalid'))]).toEqual(
      ['zebra', 'true', true],
    );
    await long.fill('olive CUP');
    await press('Tab');
    expect([await long.inputValue(), await told.count()]).toEqual(['Olive cup', 0]);
    await long.fill('');
    await press('Tab');
    expect([await long.inputValue(), await told.count()]).toEqual(['', 0]);
  });

  test('[PCS-3] Escape closes the list and not the dialog around it, nor does Enter send its form', async () => {
    await button('Ask for a name').click();
    const dialog = page.getByRole('dialog');
    await page.keyboard.type('top');
    const beside = field('Stands beside');
    await beside.fill('amber');
    await press('Escape');
    expect([await dialog.isVisible(), await beside.getAttribute('aria-expanded')]).toEqual([true, 'false']);
    await beside.fill('amber b');
    await press('Enter');
    expect(await dialog.isVisible()).toBe(true);
    await press('ArrowDown', 'Enter');
    expect(await beside.inputValue()).toBe('Amber basket');
    await press('Enter');
    await dialog.waitFor({ state: 'detached' });
  });

  test('[PCS-3] a list that is asked for says that it is awaited, and how many match beyond those that came', async () => {
    const asked = field('Asked for as one types');
    await asked.fill('blue');
    await page.getByText('Looking…').first().waitFor();
    await page.getByText('16 found, the first 5 are shown. Type more to narrow them.').first().waitFor();
    expect(await option().count()).toBe(5);
    expect(await field('Not now').isDisabled()).toBe(true);
    expect(await field('Of a short list').evaluate(one => one.matches(':required:invalid'))).toBe(true);
  });

  test('[PCS-5] a day is typed, emptied, and told when it is only begun', async () => {
    const day = page.getByLabel('Empty day');
    const told = page.getByText('Give day, month and year, or empty the field.');
    await day.focus();
    await page.keyboard.type('03');
    await button('Ask').focus();
    await told.waitFor();
    expect(await day.getAttribute('aria-invalid')).toBe('true');
    await day.focus();
    await page.keyboard.type('03052026');
    await page.getByText('Days: ["2026-03-05","2026-03-05"]').waitFor();
    expect(await told.count()).toBe(0);
    await day.fill('');
    await page.getByText('Days: ["","2026-03-05"]').waitFor();
    expect(await page.getByLabel('Needed day').evaluate(one => one.matches(':required:valid'))).toBe(true);
  });

  const states: readonly [string, (on: Page) => Promise<unknown>][] = [
    ['closed', async () => {}],
    ['a question', on => button('Ask', on).click()],
    ['a long dialog', on => button('Ask at length', on).click()],
    [
      'a list in a dialog',
      on =>
        button('Ask for a name', on)
          .click()
          .then(() => field('Stands beside', on).fill('amber')),
    ],
    ['actions', on => button('Actions', on).click()],
    ['ticks', on => button('Colors', on).click()],
    ['a menu at the edge', on => button('At the edge', on).click()],
    [
      'a long list',
      on =>
        field('Of a long list', on)
          .press('ArrowDown')
          .then(() => on.keyboard.press('ArrowDown')),
    ],
    ['an empty list', on => field('Of an empty list', on).click()],
    [
      'unknown words',
      on =>
        field('Of a long list', on)
          .fill('zebra')
          .then(() => on.keyboard.press('Escape')),
    ],
  ];

  test.each(states)(
    '[PCS-6] %s keeps WCAG 2.2 A and AA, light and dark',
    async (name, reach) => {
      await reach(page);
      // With all closed the whole page, then what is open and what opened it.
      const within = name === 'closed' ? [] : ['dialog[open]', ':popover-open', '[aria-expanded="true"]'];
      const shown = await Promise.all(within.map(async one => ((await page.locator(one).count()) > 0 ? [one] : [])));
      expect(name === 'closed' || name === 'unknown words' || shown.flat().length > 0).toBe(true);
      expect(await violationsOfBoth(page, shown.flat())).toEqual({ light: [], dark: [] });
      expect(await page.locator('style').count()).toBe(0);
      expect(complaints).toEqual([]);
    },
    60_000,
  );

  test('[PCS-6] whatever is open stays inside a window of 320 px', async () => {
    const narrow = await newPage({});
    // 256 px high: what is left of 1280 by 1024 at fourfold zoom.
    for (const [name, reach, height] of states.flatMap(([name, reach]) => [640, 256].map(height => [name, reach, height] as const))) {
      await narrow.setViewportSize({ width: 320, height });
      await open(narrow);
      await reach(narrow);
      const outside =
        await narrow.evaluate(`[document.documentElement.scrollWidth > innerWidth, ...[...document.querySelectorAll('dialog, :popover-open')]
        .map(one => one.getBoundingClientRect())
        .filter(box => box.left < 0 || box.top < 0 || box.right > innerWidth || box.bottom > innerHeight || box.width === 0)]`);
      expect([name, height, outside]).toEqual([name, height, [false]]);
    }
    await narrow.context().close();
  });

  test('[PCS-6] with forced colors an outline shows where one is, as washes are not drawn', async () => {
    const forced = await newPage({ viewport: { width: 1280, height: 900 }, forcedColors: 'active' });
    await open(forced);
    const outlineOf = (what: Locator) =>
      what.evaluate(element => element.ownerDocument.defaultView!.getComputedStyle(element).outlineStyle);
    await button('Actions', forced).click();
    expect(await outlineOf(forced.getByRole('menuitem', { name: 'Copy' }))).toBe('solid');
    expect(await outlineOf(forced.getByRole('menuitem', { name: 'Print' }))).toBe('none');
    await forced.keyboard.press('Escape');
    await field('Of a long list', forced).press('ArrowDown');
    await forced.keyboard.press('ArrowDown');
    expect(await outlineOf(option({}, forced).first())).toBe('solid');
    expect(await violationsOf(forced)).toEqual([]);
    await forced.context().close();
  });
});
