/** Wiring: opens the store, loads the demo on the very first start, and serves the workbench on the loopback address. */
import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve as listen } from '@hono/node-server';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { readDatasets } from '#adapters/datasets/readDatasets.ts';
import { noteDocx } from '#adapters/documents/noteDocx.ts';
import { pdfPrinter } from '#adapters/files/printPdf.ts';
import { readTable } from '#adapters/files/readTable.ts';
import { readTableApart } from '#adapters/files/readTableApart.ts';
import { zipFiles } from '#adapters/files/zipFiles.ts';
import { workerEstimator } from '#adapters/solver/workerEstimator.ts';
import { dataFolder, openStoreFromEnvironment } from '#adapters/storage/openStore.ts';
import { loadDemoClients } from '#app/clients/loadDemoClients.ts';
import { isDocument } from '#app/documents.ts';
import { type Demo, loadDemo } from '#app/loadDemo.ts';
import { Minerals } from '#app/minerals.ts';
import { Shelf } from '#app/shelf.ts';
import { Fault } from '#core/errors.ts';
import { createApp } from './app.ts';
import { staticFiles } from './staticFiles.ts';
import type { World } from './world.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const built = join(root, 'dist', 'web');

export interface Serving {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** @throws Fault port-in-use and the faults of the database */
export async function serve(env: Readonly<Record<string, string | undefined>>, say: (text: string) => void): Promise<Serving> {
  await buildWhenOlder(say);
  const store = await openStoreFromEnvironment(env);
  const estimator = workerEstimator();
  const vault = await openClientVault(dataFolder(env));
  const now = (): Date => new Date();
  try {
    const log = (line: string): void => void process.stderr.write(line);
    const minerals = new Minerals(store, estimator, log);
    const world: World = {
      store,
      shelf: new Shelf(store, minerals),
      minerals,
      vault,
      noteDocument: noteDocx,
      now,
      newId: randomUUID,
      database: env.PLATEWRIGHT_DATABASE_URL ? 'PostgreSQL' : 'SQLite',
      demo: readDemo,
      readTable: readTableApart(),
      pdfPrinter: () => pdfPrinter(process.env),
      zip: zipFiles,
      readDatasets,
      log,
    };
    if ((await store.revision()) === 0) {
      await loadDemo(readDemo(), store);
      await loadDemoClients(vault, now());
    }
    const app = createApp(world);
    app.get('*', staticFiles(built));
    return await listening(app.fetch, portOf(env.PORT), async () => {
      await estimator.close();
      await vault.close();
      await store.close();
    });
  } catch (error) {
    await vault.close();
    await store.close();
    throw error;
  }
}

function readDemo(): Demo {
  const folder = join(root, 'data', 'demo');
  const jsonIn = (name: string): unknown[] =>
    readdirSync(join(folder, name))
      .sort()
      .map(file => JSON.parse(readFileSync(join(folder, name, file), 'utf8')));
  return {
    table: readTable(readFileSync(join(folder, 'labels.csv'))),
    plates: jsonIn('plates').filter(isDocument),
    guides: jsonIn('guides').filter(isDocument),
    handouts: jsonIn('handouts')
      .filter(isDocument)
      .filter(({ topic }) => topic !== undefined),
  };
}

function portOf(given: string | undefined): number {
  if (given === undefined || given === '') return 4173;
  const port = Number(given);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new Fault('port-in-use', `PORT is "${given}", which is no port.`);
  return port;
}

function listening(fetch: Parameters<typeof listen>[0]['fetch'], port: number, closeStore: () => Promise<void>): Promise<Serving> {
  return new Promise((done, failed) => {
    const server = listen({ fetch, port, hostname: '127.0.0.1' }, info => {
      done({
        address: `http://127.0.0.1:${info.port}`,
        close: () =>
          new Promise(closed => {
            server.close(() => closed(closeStore()));
            if ('closeAllConnections' in server) server.closeAllConnections();
          }),
      });
    });
    server.on('error', (error: NodeJS.ErrnoException) => {
      failed(error.code === 'EADDRINUSE' || error.code === 'EACCES' ? new Fault('port-in-use', `Port ${port} cannot be used.`) : error);
    });
  });
}

/** Builds the browser part when one of its sources is newer than what was built. */
async function buildWhenOlder(say: (text: string) => void): Promise<void> {
  const sources = newest(join(root, 'src', 'web'));
  const index = join(built, 'index.html');
  if (existsSync(index) && statSync(index).mtimeMs >= sources) return;
  say('Platewright: building its browser part, once …\n');
  const { build } = await import('vite');
  await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'error' });
}

function newest(folder: string): number {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}
