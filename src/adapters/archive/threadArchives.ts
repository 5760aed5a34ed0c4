import { Worker } from 'node:worker_threads';
import type { DatabasePlace } from '#adapters/storage/connections.ts';
import type { Archives } from '#app/archives.ts';
import type { Store } from '#app/store.ts';
import type { Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import type { ArchiveTask, ArchiveWord } from './archiveTask.ts';

/** Of the thread's heap; pictures lie beside it.. */
const mostMegabytes = 320;

/** Archives of the store at `place`, written and read on a thread of its own, so that the program answers meanwhile. */
export function threadArchives(store: Pick<Store, 'exclusively'>, place: DatabasePlace, version: string, now: () => Date): Archives {
  return {
    write: async (path, clients, watch) => {
      const word = await onThread(
        { do: 'write', path, ...(clients === undefined ? {} : { clients }), madeAt: now(), version },
        place,
        watch,
      );
      if ('look' in word) return word.look;
      throw unexpected();
    },
    look: async (path, watch) => {
      const word = await onThread({ do: 'look', path }, place, watch);
      if ('look' in word) return word.look;
      throw unexpected();
    },
    // The thread writes in the turn of this program's own writes.
    restore: (path, into, watch) =>
      store.exclusively(async () => {
        const word = await onThread({ do: 'restore', path, into }, place, watch);
        if ('restored' in word) return word.restored;
        throw unexpected();
      }),
  };
}

type Result = Exclude<ArchiveWord, { readonly step: unknown } | { readonly fault: unknown } | { readonly failed: unknown }>;

/** @throws Fault what the thread met */
function onThread(task: ArchiveTask, place: DatabasePlace, watch: Watch): Promise<Result> {
  return new Promise((done, failed) => {
    const worker = new Worker(new URL('./archiveWorker.ts', import.meta.url), {
      workerData: { task, place },
      resourceLimits: { maxOldGenerationSizeMb: mostMegabytes, maxYoungGenerationSizeMb: 32 },
    });
    worker.on('message', (word: ArchiveWord) => {
      if ('step' in word) watch.step(...word.step).catch(() => worker.postMessage('cancel'));
      else if ('fault' in word) failed(new Fault(word.fault, word.message));
      else if ('failed' in word) failed(new Fault('program-fault', `The thread of the archive failed (${word.failed}).`));
      else done(word);
    });
    worker.on('error', error => failed(faultOf(error)));
    worker.on('exit', () => failed(new Fault('program-fault', 'The thread of the archive ended.')));
  });
}

function faultOf(error: unknown): Fault {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ERR_WORKER_OUT_OF_MEMORY') return new Fault('archive-not-valid', 'Reading it needs more memory than an archive may take.');
  // A place in the file that is beyond numbers: the reader of ZIP files throws it where nobody can catch it.
  if (code === 'ERR_OUT_OF_RANGE') return new Fault('archive-not-valid', 'It is damaged: it names places that no file has.');
  return new Fault('program-fault', `The thread of the archive failed (${error instanceof Error ? error.name : typeof error}).`);
}

function unexpected(): Fault {
  return new Fault('program-fault', 'The thread of the archive answered something else.');
}
