import { Worker } from 'node:worker_threads';
import type { Estimated, MineralEstimator } from '#app/minerals.ts';
import { Fault } from '#core/errors.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';

interface Waiting {
  readonly done: (estimates: readonly Estimated[]) => void;
  readonly failed: (error: unknown) => void;
}

/** Estimates on a thread of its own, started with the first label, so that the program answers meanwhile. */
export function workerEstimator(): MineralEstimator {
  let worker: Worker | undefined;
  let last = 0;
  let tables: readonly LargerTable[] = [];
  const waiting = new Map<number, Waiting>();

  const fail = (error: unknown): void => {
    for (const { failed } of waiting.values()) failed(error);
    waiting.clear();
    worker = undefined;
  };
  const started = (): Worker => {
    if (worker !== undefined) return worker;
    worker = new Worker(new URL('./estimateWorker.ts', import.meta.url));
    worker.on('message', ({ id, estimates, failed }: { id: number; estimates?: readonly Estimated[]; failed?: string }) => {
      const one = waiting.get(id);
      waiting.delete(id);
      if (estimates === undefined) one?.failed(new Fault('program-fault', `Estimating failed (${failed}).`));
      else one?.done(estimates);
    });
    worker.on('error', fail);
    worker.on('exit', () => fail(new Fault('program-fault', 'The estimating thread ended.')));
    worker.unref();
    if (tables.length > 0) worker.postMessage({ tables });
    return worker;
  };
  return {
    estimate: labels =>
      new Promise((done, failed) => {
        const id = ++last;
        waiting.set(id, { done, failed });
        started().postMessage({ id, labels });
      }),
    takeReferences: given => {
      tables = given;
      worker?.postMessage({ tables });
    },
    close: async () => {
      const running = worker;
      worker = undefined;
      await running?.terminate();
    },
  };
}
