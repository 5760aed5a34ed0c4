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
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  const store = await openSqliteStore(folder);
  await store.applyImport({
    fileName: 'bench',
    labels: grownShelf(5_000).map(({ name, label: { printed } }) => ({
      begins: { name, category: 'bench' },
      label: { kind: 'read' as const, printed },
    })),
  });
  await store.close();
  await (await startWorkbench(folder)).stop();
  const start = performance.now();
  const workbench = await startWorkbench(folder);
  const browser = await launchBrowser();
  try {
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
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
          const tally = document.querySelector('.tally');
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
