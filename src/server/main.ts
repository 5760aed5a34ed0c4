/** Wiring: opens the store, loads the demo on the very first start, and serves the workbench on the loopback address. */
import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { copyFolder } from '#adapters/archive/copyFolder.ts';
import { restoreMark } from '#adapters/archive/restoreMark.ts';
import { threadArchives } from '#adapters/archive/threadArchives.ts';
import { waitingFiles } from '#adapters/archive/waitingFiles.ts';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { readDatasets } from '#adapters/datasets/readDatasets.ts';
import { noteDocx } from '#adapters/documents/noteDocx.ts';
import { browserPart } from '#adapters/files/browserPart.ts';
import { pdfPrinter, sweepProfiles } from '#adapters/files/printPdf.ts';
import { readTable } from '#adapters/files/readTable.ts';
import { readTableApart } from '#adapters/files/readTableApart.ts';
import { zipFiles } from '#adapters/files/zipFiles.ts';
import { workerEstimator } from '#adapters/solver/workerEstimator.ts';
import { dataFolder, openStoreAt, placeFromEnvironment } from '#adapters/storage/openStore.ts';
import { privateFolder, refuseMissingShelf } from '#adapters/storage/privateFolder.ts';
import { DailyCopies } from '#app/archive/dailyCopies.ts';
import { WaitingArchives } from '#app/archive/waitingArchives.ts';
import { loadDemoClients } from '#app/clients/loadDemoClients.ts';
import { isDocument } from '#app/documents.ts';
import { type Demo, loadDemo } from '#app/loadDemo.ts';
import { Minerals } from '#app/minerals.ts';
import { Shelf } from '#app/shelf.ts';
import { createApp } from './app.ts';
import { openDoor, portOf } from './door.ts';
import { newSecret, printedAddress } from './entry.ts';
import { servedPart } from './servedPart.ts';
import { staticFiles } from './staticFiles.ts';
import type { World } from './world.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

const hourMilliseconds = 3_600_000;
const { version } = z.object({ version: z.string() }).parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')));

export interface Serving {
  /** The one to print: it lets in whoever opens it. */
  readonly address: string;
  readonly folder: string;
  /** When the shelf was last changed before this start, ISO 8601; undefined for a new one. */
  readonly writtenAt: string | undefined;
  readonly close: () => Promise<void>;
}

/**
 * From here on everything the program makes is the user's alone, whatever the umask was before.
 * @throws Fault port-not-valid, port-in-use, output-not-written, those of the data folder and of the database
 */
export async function serve(
  env: Readonly<Record<string, string | undefined>>,
  say: (text: string) => void,
  beginsNewShelf = false,
): Promise<Serving> {
  const port = portOf(env.PORT);
  const web = await browserPart(root, say);
  process.umask(0o077);
  const door = await openDoor(port);
  /** What is open, the last one first. */
  const open: (() => Promise<void> | void)[] = [];
  const close = async (): Promise<void> => {
    await door.close();
    for (const closeOne of open.splice(0)) await closeOne();
  };
  try {
    const folder = privateFolder(dataFolder(env), say);
    open.unshift(folder.undo);
    const isPostgres = Boolean(env.PLATEWRIGHT_DATABASE_URL);
    if (!isPostgres && !beginsNewShelf) refuseMissingShelf(folder.path);
    await sweepProfiles();
    const place = placeFromEnvironment({ ...env, PLATEWRIGHT_DATA: folder.path });
    const store = await openStoreAt(place);
    open.unshift(() => store.close());
    const vault = await openClientVault(folder.path);
    open.unshift(() => vault.close());
    const estimator = workerEstimator();
    open.unshift(() => estimator.close());
    const now = (): Date => new Date();
    const secret = newSecret();
    const log = (line: string): void => void process.stderr.write(line);
    const minerals = new Minerals(store, estimator, log);
    const archives = threadArchives(store, place, version, now);
    const copies = new DailyCopies({ store, vault, archives, now }, copyFolder(folder.path));
    const world: World = {
      archives,
      waiting: new WaitingArchives(archives, waitingFiles(folder.path), randomUUID),
      copies,
      restoreMark: restoreMark(folder.path),
      store,
      shelf: new Shelf(store, minerals),
      minerals,
      vault,
      noteDocument: noteDocx,
      now,
      newId: randomUUID,
      database: isPostgres ? 'PostgreSQL' : 'SQLite',
      demo: readDemo,
      readTable: readTableApart(),
      pdfPrinter: wanted => pdfPrinter(process.env, wanted),
      zip: zipFiles,
      readDatasets,
      browserPart: await servedPart(web),
      secret,
      log,
    };
    const writtenAt = await store.writtenAt();
    await store.onceWhenNew(async () => {
      await loadDemo(readDemo(), store);
      await loadDemoClients(vault, now());
    });
    const hourly = setInterval(() => void copies.makeWhenDue(), hourMilliseconds);
    open.unshift(() => clearInterval(hourly));
    // What the program itself has just put there needs none.
    if (writtenAt !== undefined || beginsNewShelf) void copies.makeWhenDue();
    const app = createApp(world);
    app.get('*', staticFiles(web));
    door.answerWith(app.fetch);
    return { address: printedAddress(door.origin, secret), folder: folder.path, writtenAt, close };
  } catch (error) {
    await close();
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
