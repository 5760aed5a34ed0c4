import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { figure } from './measure.ts';
import { grownShelf } from './survey.ts';

/** Small reads of the store every 10 ms while 50,000 labels are imported, and for how long the program answers nobody. */
export async function benchBusyStore(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  const store = await openSqliteStore(folder);
  try {
    const { food } = await store.addFood({ name: 'Ham' }, { kind: 'read', printed: grownShelf(1)[0]!.label.printed });
    const labels = grownShelf(50_000).map(({ name, label: { printed } }) => ({
      begins: { name, category: 'bench' },
      label: { kind: 'read' as const, printed },
    }));
    for (const [what, read] of [
      ['getFood', () => store.getFood(food.id)],
      ['counts', () => store.counts()],
    ] as const) {
      let isDone = false;
      const started = performance.now();
      const work = store.applyImport({ fileName: 'bench', labels }).finally(() => {
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
      figure(`import of 50,000 labels while ${what} is asked every 10 ms, seconds`, (performance.now() - started) / 1000, '');
      figure(`  ${what}, asked ${waits.length} times, p99 in ms`, percentile(waits, 0.99), 'under 200');
      figure(`  ${what}, longest in ms`, Math.max(...waits), '');
      figure('  the program answers nobody for at most, ms', Math.max(...late), 'under 50');
    }
  } finally {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function percentile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0;
}
