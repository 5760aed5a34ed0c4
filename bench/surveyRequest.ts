import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { copyFolder } from '#adapters/archive/copyFolder.ts';
import { restoreMark } from '#adapters/archive/restoreMark.ts';
import { threadArchives } from '#adapters/archive/threadArchives.ts';
import { waitingFiles } from '#adapters/archive/waitingFiles.ts';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { readDatasets } from '#adapters/datasets/readDatasets.ts';
import { noteDocx } from '#adapters/documents/noteDocx.ts';
import { workerEstimator } from '#adapters/solver/workerEstimator.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { DailyCopies } from '#app/archive/dailyCopies.ts';
import { WaitingArchives } from '#app/archive/waitingArchives.ts';
import { Minerals } from '#app/minerals.ts';
import { Shelf } from '#app/shelf.ts';
import { createApp } from '../src/server/app.ts';
import { best, figure } from './measure.ts';
import { grownShelf } from './survey.ts';

/** The survey request of the workbench on a real SQLite file: after a start, and when the shelf has been read. */
export async function benchSurveyRequest(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  const store = await openSqliteStore(folder);
  const vault = await openClientVault(folder);
  try {
    for (const size of [5_000, 50_000]) {
      await store.purgeAll();
      const labels = grownShelf(size).map(({ name, label: { printed } }) => ({
        begins: { name, category: 'bench' },
        label: { kind: 'read' as const, printed },
      }));
      const start = performance.now();
      await store.applyImport({ fileName: 'bench', labels });
      figure(
        `import of ${size.toLocaleString('en-US')} labels into SQLite, seconds`,
        (performance.now() - start) / 1000,
        'one transaction',
      );
      const archives = threadArchives(store, { engine: 'sqlite', folder }, '0', () => new Date());
      const world = {
        archives,
        waiting: new WaitingArchives(archives, waitingFiles(folder), randomUUID),
        copies: new DailyCopies({ store, vault, archives, now: () => new Date() }, copyFolder(folder)),
        restoreMark: restoreMark(folder),
        store,
        shelf: new Shelf(store),
        vault,
        noteDocument: noteDocx,
        newId: randomUUID,
        now: () => new Date(),
        minerals: new Minerals(store, workerEstimator(), () => undefined),
        database: 'SQLite',
        demo: () => ({ table: { headings: [], rows: [], issues: [] }, plates: [], guides: [], handouts: [] }),
        pdfPrinter: () => {
          throw new Error('not used');
        },
        zip: () => new Uint8Array(),
        readDatasets,
        readTable: () => Promise.reject(new Error('not used')),
        browserPart: 'bench',
        secret: 'bench',
        log: () => undefined,
      };
      const app = createApp(world);
      const opened = await app.request('http://127.0.0.1/?entry=bench', { headers: { host: '127.0.0.1' } });
      const cookie = opened.headers.get('set-cookie')!;
      const body = JSON.stringify({ category: 'bench', plate: 'with-dry-pasta', yardstick: 'low-in-sodium-as-eaten' });
      const request = async (): Promise<void> => {
        const answer = await app.request('http://127.0.0.1/api/survey', {
          method: 'POST',
          headers: { host: '127.0.0.1', cookie, 'content-type': 'application/json' },
          body,
        });
        await answer.text();
      };
      const first = performance.now();
      await request();
      figure(`  first survey request of ${size.toLocaleString('en-US')}, labels read, seconds`, (performance.now() - first) / 1000, '');
      let fastest = Number.POSITIVE_INFINITY;
      for (let run = 0; run < 4; run++) {
        const at = performance.now();
        await request();
        fastest = Math.min(fastest, performance.now() - at);
      }
      figure(`  each further one, seconds`, fastest / 1000, size === 50_000 ? 'under 1' : 'growth');
      const rows = await store.standingLabels();
      figure(
        '  yardstick: the same number of labels through JSON and back',
        best(() => JSON.parse(JSON.stringify(rows)), 2),
        'same labels, same run',
      );
    }
  } finally {
    await vault.close();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
