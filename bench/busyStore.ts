import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { Shelf } from '#app/shelf.ts';
import { figure } from './measure.ts';
import { grownShelf } from './survey.ts';

/** Small reads of the store every 10 ms while 50,000 labels are imported and read, and for how long the program answers nobody. */
export async function benchBusyStore(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  const store = await openSqliteStore(folder);
  try {
    const { food } = await store.addFood({ name: 'Ham' }, { kind: 'read', printed: grownShelf(1)[0]!.label.printed });
    const labels = grownShelf(50_000).map(({ name, label: { printed } }) => ({
      begins: { name, category: 'bench' },
      label: { kind: 'read' as const, printed },
    }));
    const getFood = () => store.getFood(food.id);
    const load = () => store.applyImport({ fileName: 'bench', labels });
    await whileBusy('import of 50,000 labels', load, 'getFood', getFood);
    await store.purgeAll();
    await whileBusy('import of 50,000 labels', load, 'counts', () => store.counts());
    await whileBusy('50,000 labels are put on the shelf', () => new Shelf(store).foods(), 'getFood', getFood);
  } finally {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function whileBusy(what: string, start: () => Promise<unknown>, name: string, read: () => Promise<unknown>): Promise<void> {
  let isDone = false;
  const started = performance.now();
  const work = start().finally(() => {
    isDone = true;
  });
  const waits: number[] = [];
  const late: number[] = [];
  while (!isDone) {
    const before = performance.now();
    await setTimeout(10);
    late.push(performance.now() - before - 10);
    const at = performance.now();
    await read();
    waits.push(performance.now() - at);
  }
  await work;
  figure(`${what}, seconds`, (performance.now() - started) / 1000, '');
  figure(`  ${name} every 10 ms, ${waits.length} times, p99 in ms`, percentile(waits, 0.99), 'under 200');
  figure(`  ${name}, longest in ms`, Math.max(...waits), '');
  figure('  longest time without a turn for anybody, p99 in ms', percentile(late, 0.99), 'under 50');
  figure('  longest time without a turn for anybody, ms', Math.max(...late), '');
}

function percentile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0;
}
