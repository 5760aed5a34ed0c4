/** The thread that writes, reads and restores an archive, on a connection of its own. Any message to it cancels the work. */
import { rm } from 'node:fs/promises';
import { setImmediate } from 'node:timers/promises';
import { parentPort, workerData } from 'node:worker_threads';
import type { DatabasePlace } from '#adapters/storage/connections.ts';
import { openStoreAt } from '#adapters/storage/openStore.ts';
import type { Store } from '#app/store.ts';
import type { Watch } from '#app/watch.ts';
import { Fault, thrownAt } from '#core/errors.ts';
import { archiveRows, lookAtArchive } from './archiveRows.ts';
import type { ArchiveTask, ArchiveWord } from './archiveTask.ts';
import { writeArchive } from './writeArchive.ts';

const { task, place }: { readonly task: ArchiveTask; readonly place: DatabasePlace } = workerData;
const port = parentPort!;

let isCancelled = false;
port.once('message', () => {
  isCancelled = true;
});

/** A word a fifth of a second is enough for whoever watches. */
const millisecondsBetweenWords = 200;
let lastWord = -millisecondsBetweenWords;

const watch: Watch = {
  step: async (what, done, of) => {
    const now = performance.now();
    if (now - lastWord >= millisecondsBetweenWords) {
      lastWord = now;
      say({ step: [what, done, of] });
    }
    // Lets a message come in.
    await setImmediate();
    if (isCancelled) throw new Fault('work-cancelled', 'The work was stopped before its end.');
  },
};

try {
  say(await done());
} catch (error) {
  say(error instanceof Fault ? { fault: error.code, message: error.message } : { failed: nameOf(error) });
} finally {
  port.close();
}

async function done(): Promise<ArchiveWord> {
  switch (task.do) {
    case 'look':
      return { look: await lookAtArchive(task.path, watch) };
    case 'write':
      return withStore(async store => {
        try {
          await writeArchive(store, task.path, { ...task, clients: task.clients }, watch);
          return { look: await lookAtArchive(task.path, watch) };
        } catch (error) {
          // A file that stood there before is somebody's own.
          if (!isThere(error)) await rm(task.path, { force: true });
          throw writingFault(error);
        }
      });
    case 'restore':
      return withStore(async store => ({ restored: await store.restoreRows(() => archiveRows(task.path), task.into, watch) }));
  }
}

async function withStore<Result>(work: (store: Store) => Promise<Result>): Promise<Result> {
  const store = await openStoreAt(place);
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}

function isThere(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'EEXIST';
}

function writingFault(error: unknown): unknown {
  if (isThere(error)) return new Fault('output-not-written', 'A file of that name is there already; it was left as it is.');
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return /^E(NOSPC|DQUOT|ACCES|PERM|ROFS|IO|NOENT|FBIG)$/.test(code)
    ? new Fault('archive-not-made', `The file cannot be written (${code}).`)
    : error;
}

/** Only what it is and where: a message may hold the words of a label. */
function nameOf(error: unknown): string {
  if (!(error instanceof Error)) return typeof error;
  const [place = ''] = thrownAt(error);
  return `${error.name}${'code' in error ? ` ${String(error.code)}` : ''} ${place.trim()}`;
}

function say(word: ArchiveWord): void {
  port.postMessage(word);
}
