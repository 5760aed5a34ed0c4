import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { browserPath, launchBrowser, removeFolder, startWorkbench } from '../test/e2e/workbench.ts';
import { figure } from './measure.ts';
import { grownShelf } from './survey.ts';

/** In a real browser, 5,000 foods: from choosing another companion to the verdicts redrawn; and starts to the first paint. */
export async function benchBrowser(): Promise<void> {
  if (browserPath === undefined) {
    process.stdout.write('browser: skipped, no Chromium-family browser is installed\n');
    return;
  }
  await benchRedraw();
  await benchScrolling();
}

/** A data folder with so many foods in one category. */
async function shelfFolder(foods: number): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  const store = await openSqliteStore(folder);
  await store.applyImport({
    fileName: 'bench',
    labels: grownShelf(foods).map(({ name, label: { printed } }) => ({
      begins: { name, category: 'bench' },
      label: { kind: 'read' as const, printed },
    })),
  });
  await store.close();
  return folder;
}

/** Frames while a table of 50,000 rows is scrolled by a screen every frame, with pages of an empty frame as the yardstick. */
async function benchScrolling(): Promise<void> {
  const folder = await shelfFolder(50_000);
  const workbench = await startWorkbench(folder);
  const browser = await launchBrowser();
  try {
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    await page.goto(workbench.address);
    await page.getByRole('heading', { name: '50000 foods' }).waitFor({ timeout: 120_000 });
    await page.waitForTimeout(2_000);
    const frames = (by: number): Promise<number[]> =>
      page.evaluate<number[]>(`new Promise(done => {
        const table = document.querySelector('[role=region][aria-label^="Foods of the survey"]');
        const times = [];
        let last = performance.now();
        const next = now => {
          times.push(now - last);
          last = now;
          if (times.length > 120) return done(times.slice(1).sort((a, b) => a - b));
          table.scrollTop += ${by};
          requestAnimationFrame(next);
        };
        requestAnimationFrame(next);
      })`);
    const still = await frames(0);
    figure('a frame of 50,000 rows at rest, 95th percentile, milliseconds', still[114]!, 'yardstick');
    const moving = await frames(600);
    figure('a frame while they scroll by a screen each, median, milliseconds', moving[60]!, '');
    figure('  95th percentile', moving[114]!, 'smooth: under 33');
    figure('  slowest of 120', moving[119]!, '');
  } finally {
    await browser.close();
    await workbench.stop();
    removeFolder(folder);
  }
}

async function benchRedraw(): Promise<void> {
  const folder = await shelfFolder(5_000);
  await (await startWorkbench(folder)).stop();
  const start = performance.now();
  const workbench = await startWorkbench(folder);
  const browser = await launchBrowser();
  try {
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    await page.goto(workbench.address);
    await page.locator('nav').waitFor();
    figure('a later start, program and browser, to the first paint, seconds', (performance.now() - start) / 1000, 'under 2');
    await page
      .getByRole('heading', { name: '5,000 foods' })
      .or(page.getByRole('heading', { name: '5000 foods' }))
      .waitFor();
    const times: number[] = [];
    for (const plate of ['with-dry-pasta', 'on-its-own', 'half-cup-with-dry-pasta', 'with-dry-pasta', 'on-its-own']) {
      times.push(
        // Inside the page: from the choice to the frame after the counts have changed.
        await page.evaluate<number>(`new Promise(done => {
          const choice = document.querySelector('select[aria-label="Plate"]');
          const tally = document.querySelector('[aria-label="Verdicts"]');
          const start = performance.now();
          new MutationObserver((_, watch) => { watch.disconnect(); requestAnimationFrame(() => done(performance.now() - start)); }).observe(tally, { subtree: true, characterData: true, childList: true });
          Object.getOwnPropertyDescriptor(HTMLSelectElement.prototype, 'value').set.call(choice, ${JSON.stringify(plate)});
          choice.dispatchEvent(new Event('change', { bubbles: true }));
        })`),
      );
      await page.waitForTimeout(300);
    }
    times.sort((a, b) => a - b);
    figure('another companion, verdicts of 5,000 foods redrawn, median, milliseconds', times[2]!, 'under 100');
    figure('  slowest of five', times[4]!, '');
  } finally {
    await browser.close();
    await workbench.stop();
    removeFolder(folder);
  }
}
