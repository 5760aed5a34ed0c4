import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, launchBrowser, removeFolder, startWorkbench, type Workbench } from './workbench.ts';

// A table so long that somebody waits, on the running program (docs/rules/server.md, SRV-9).
const rows = 20_000;
const table = `name,maker,category,servingGrams,energyKcal,sodiumMg,statement\n${Array.from(
  { length: rows },
  (_, at) => `Slices ${at},Gribley Bakers,many slices,28,80,${at % 500},"water, coconut oil, starch, salt"`,
).join('\n')}\n`;

let workbench: Workbench;
beforeAll(async () => {
  workbench = await startWorkbench();
}, 120_000);
afterAll(async () => {
  await workbench?.stop();
  if (workbench !== undefined) removeFolder(workbench.folder);
});

async function get<Body>(path: string): Promise<Body> {
  return (await (await workbench.fetch(`/api${path}`)).json()) as Body;
}
async function foods(): Promise<number> {
  return (await get<{ foods: number }>('/workspace')).foods;
}

/** Waits until the work has come to `what`. */
async function until(workId: string, what: string): Promise<{ done: number; of: number }> {
  for (;;) {
    const far = await get<{ what: string; done: number; of: number } | null>(`/progress/${workId}`);
    if (far?.what === what) return far;
    await setTimeout(5);
  }
}

test.each([
  ['Reading kilobytes', Math.ceil(table.length / 1024)],
  ['Reading rows', rows],
  ['Keeping labels', rows],
])('[SRV-9] %s: stopped in the middle, nothing is kept', { timeout: 60_000 }, async (what, of) => {
  const before = await foods();
  const importsBefore = await get<unknown[]>('/imports');
  const workId = crypto.randomUUID();
  const stop = new AbortController();
  const form = new FormData();
  form.set('file', new File([table], 'many.csv'));
  form.set('workId', workId);
  const importing = workbench.fetch('/api/imports', {
    method: 'POST',
    body: form,
    signal: stop.signal,
  });
  const ended = expect(importing).rejects.toThrow(/abort/);
  expect((await until(workId, what)).of).toBe(of);
  stop.abort();
  await ended;
  while ((await get(`/progress/${workId}`)) !== null) await setTimeout(5);
  expect(await foods()).toBe(before);
  expect(await get('/imports')).toEqual(importsBefore);
});

describe.skipIf(browserPath === undefined)('in a browser (skipped where none is installed)', () => {
  test('[SRV-9] progress is shown, cancel keeps nothing, and neither does a browser that is closed', { timeout: 120_000 }, async () => {
    const before = await foods();
    const browser = await launchBrowser();
    const begin = async () => {
      const page = await browser.newPage();
      await workbench.letIn(page.context());
      await page.goto(`${workbench.address}/data`);
      await page.setInputFiles('input[accept*=".csv"]', { name: 'many.csv', mimeType: 'text/csv', buffer: Buffer.from(table) });
      await page.getByRole('button', { name: `Keep ${rows} labels` }).click({ timeout: 60_000 });
      await page.getByText(/^(Reading kilobytes|Reading rows|Keeping labels): [\d,]+ of [\d,]+$/).waitFor();
      return page;
    };
    const cancelled = await begin();
    await cancelled.getByRole('button', { name: 'Cancel' }).click();
    await cancelled.getByText('Nothing was kept.').waitFor();
    expect(await foods()).toBe(before);
    await begin();
    await browser.close();
    await setTimeout(3_000);
    expect(await foods()).toBe(before);
  });
});
