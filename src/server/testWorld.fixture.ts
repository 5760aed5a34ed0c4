import { randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { readDatasets } from '#adapters/datasets/readDatasets.ts';
import { noteDocx } from '#adapters/documents/noteDocx.ts';
import { pdfPrinter } from '#adapters/files/printPdf.ts';
import { readTable } from '#adapters/files/readTable.ts';
import { readTableApart } from '#adapters/files/readTableApart.ts';
import { zipFiles } from '#adapters/files/zipFiles.ts';
import { workerEstimator } from '#adapters/solver/workerEstimator.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { loadDemoClients } from '#app/clients/loadDemoClients.ts';
import { isDocument } from '#app/documents.ts';
import { type Demo, loadDemo } from '#app/loadDemo.ts';
import { Minerals } from '#app/minerals.ts';
import { Shelf } from '#app/shelf.ts';
import { createApp } from './app.ts';
import { staticFiles } from './staticFiles.ts';

const demo = fileURLToPath(new URL('../../data/demo/', import.meta.url));

interface SentTable {
  readonly fileName: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
  readonly mapping?: readonly string[];
}

/** The server on a real SQLite store in a folder of its own, for tests; what it logs is kept. */
export async function testServer(withDemo = true) {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-server-'));
  const store = await openSqliteStore(folder);
  const logged: string[] = [];
  const jsonIn = (name: string): unknown[] =>
    readdirSync(join(demo, name))
      .sort()
      .map(file => JSON.parse(readFileSync(join(demo, name, file), 'utf8')));
  const demoFiles = (): Demo => ({
    table: readTable(readFileSync(join(demo, 'labels.csv'))),
    plates: jsonIn('plates').filter(isDocument),
    guides: jsonIn('guides').filter(isDocument),
    handouts: jsonIn('handouts')
      .filter(isDocument)
      .filter(({ topic }) => topic !== undefined),
  });
  if (withDemo) await loadDemo(demoFiles(), store);
  const estimator = workerEstimator();
  const vault = await openClientVault(folder, { n: 2 ** 10, r: 8, p: 1 });
  if (withDemo) await loadDemoClients(vault, new Date('2026-06-15T12:00:00Z'));
  const minerals = new Minerals(store, estimator, line => logged.push(line));
  const app = createApp({
    store,
    shelf: new Shelf(store, minerals),
    minerals,
    vault,
    noteDocument: noteDocx,
    newId: randomUUID,
    now: () => new Date('2026-06-15T12:00:00Z'),
    database: 'SQLite',
    demo: demoFiles,
    readTable: readTableApart(),
    pdfPrinter: () => pdfPrinter(process.env),
    zip: zipFiles,
    readDatasets,
    log: line => logged.push(line),
  });
  app.get('*', staticFiles(folder));
  const call = async (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) => {
    const response = await app.request(`http://127.0.0.1:4173/api${path}`, {
      method,
      headers: { host: '127.0.0.1:4173', ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const text = await response.text();
    // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
    return { status: response.status, headers: response.headers, body: (text === '' ? undefined : JSON.parse(text)) as any };
  };
  /** A table sent as the screen sends it. */
  const sendTable = async (path: '/imports' | '/imports/look', given: SentTable) => {
    const form = new FormData();
    form.set('file', new File([given.content], given.fileName));
    for (const key of given.mapping ?? []) form.append('mapping', key);
    const response = await app.request(`http://127.0.0.1:4173/api${path}`, {
      method: 'POST',
      headers: { host: '127.0.0.1:4173' },
      body: form,
    });
    // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
    return { status: response.status, body: (await response.json()) as any };
  };
  const close = async () => {
    await estimator.close();
    await vault.close();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { app, call, sendTable, store, vault, logged, folder, close };
}
