import { randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { copyFolder } from '#adapters/archive/copyFolder.ts';
import { restoreMark } from '#adapters/archive/restoreMark.ts';
import { threadArchives } from '#adapters/archive/threadArchives.ts';
import { waitingFiles } from '#adapters/archive/waitingFiles.ts';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { readDatasets } from '#adapters/datasets/readDatasets.ts';
import { noteDocx } from '#adapters/documents/noteDocx.ts';
import { pdfPrinter } from '#adapters/files/printPdf.ts';
import { readTable } from '#adapters/files/readTable.ts';
import { readTableApart } from '#adapters/files/readTableApart.ts';
import { zipFiles } from '#adapters/files/zipFiles.ts';
import { workerEstimator } from '#adapters/solver/workerEstimator.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { DailyCopies } from '#app/archive/dailyCopies.ts';
import { WaitingArchives } from '#app/archive/waitingArchives.ts';
import { loadDemoClients } from '#app/clients/loadDemoClients.ts';
import { isDocument } from '#app/documents.ts';
import { type Demo, loadDemo } from '#app/loadDemo.ts';
import { Minerals } from '#app/minerals.ts';
import { Shelf } from '#app/shelf.ts';
import { createApp } from './app.ts';
import { staticFiles } from './staticFiles.ts';

/** Fixed, so that tests can look for it where it must not be. */
export const testSecret = 'secret-of-the-tests-secret-of-the-tests';

const demo = fileURLToPath(new URL('../../data/demo/', import.meta.url));

interface SentTable {
  readonly fileName: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
  readonly mapping?: readonly string[];
}

/** The server on a real SQLite store in a folder of its own, for tests; what it logs is kept. `mostPages` fills the disk there. */
export async function testServer(withDemo = true, mostPages?: number) {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-server-'));
  const store = await openSqliteStore(folder, undefined, mostPages);
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
  const now = (): Date => new Date('2026-06-15T12:00:00Z');
  const archives = threadArchives(store, { engine: 'sqlite', folder }, '0.0.0', now);
  const app = createApp({
    archives,
    waiting: new WaitingArchives(archives, waitingFiles(folder), randomUUID),
    copies: new DailyCopies({ store, vault, archives, now }, copyFolder(folder)),
    restoreMark: restoreMark(folder),
    store,
    shelf: new Shelf(store, minerals),
    minerals,
    vault,
    noteDocument: noteDocx,
    newId: randomUUID,
    now,
    database: 'SQLite',
    demo: demoFiles,
    readTable: readTableApart(),
    pdfPrinter: wanted => pdfPrinter(process.env, wanted),
    zip: zipFiles,
    readDatasets,
    browserPart: 'part-of-the-tests',
    secret: testSecret,
    log: line => logged.push(line),
  });
  app.get('*', staticFiles(folder));
  const opened = await app.request(`http://127.0.0.1:4173/?entry=${testSecret}`, { headers: { host: '127.0.0.1:4173' } });
  const pass = /=([^;]*)/.exec(opened.headers.get('set-cookie')!)![1];
  /** The app as a browser meets it that has opened the printed address. */
  const letIn = {
    request: (address: string, { headers, ...init }: RequestInit = {}) => {
      const sent = new Headers(headers);
      // The port is in the cookie's name.
      const port = /\d+$/.exec(sent.get('host') ?? '')?.[0] ?? '4173';
      if (!sent.has('cookie')) sent.set('cookie', `platewright-${port}=${pass}`);
      return app.request(address, { ...init, headers: sent });
    },
  };
  const call = async (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) => {
    const response = await letIn.request(`http://127.0.0.1:4173/api${path}`, {
      method,
      headers: { host: '127.0.0.1:4173', ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const text = await response.text();
    // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
    return { status: response.status, headers: response.headers, body: (text === '' ? undefined : JSON.parse(text)) as any };
  };
  /** Makes an archive and fetches its file. */
  const archiveOf = async (withClients: boolean, passphrase?: string): Promise<Uint8Array<ArrayBuffer>> => {
    const made = await call('POST', '/archives', { withClients, ...(passphrase === undefined ? {} : { passphrase }) });
    const response = await letIn.request(`http://127.0.0.1:4173/api/archives/${made.body.id}/file`, {
      headers: { host: '127.0.0.1:4173' },
    });
    return new Uint8Array(await response.arrayBuffer());
  };
  /** Brings a file, which is looked at. */
  const bring = async (file: Uint8Array<ArrayBuffer>) => {
    const headers = { host: '127.0.0.1:4173', 'content-type': 'application/octet-stream', 'content-length': String(file.length) };
    const response = await letIn.request('http://127.0.0.1:4173/api/archives/brought', { method: 'POST', headers, body: file });
    // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
    return { status: response.status, body: (await response.json()) as any };
  };
  /** A table sent as the screen sends it. */
  const sendTable = async (path: '/imports' | '/imports/look', given: SentTable) => {
    const form = new FormData();
    form.set('file', new File([given.content], given.fileName));
    for (const key of given.mapping ?? []) form.append('mapping', key);
    const response = await letIn.request(`http://127.0.0.1:4173/api${path}`, {
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
  // `outside` is met by whoever has not opened the printed address.
  return { app: letIn, outside: app, call, archiveOf, bring, sendTable, store, vault, logged, folder, close };
}
