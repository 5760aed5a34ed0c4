import { setImmediate, setTimeout } from 'node:timers/promises';
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { ReadTable, Table, TableIssueCode, TableRow } from '#app/ports.ts';
import { unwatched, type Watch } from '#app/watch.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { heldTable, type TableLimits } from './tableLimits.ts';
import type { ReadingMessage, ReadingTask } from './tableWorker.ts';

export interface ReadingLimits {
  readonly table: TableLimits;
  /** Of the thread's heap. What lies beside it, bytes of the file and pieces being unpacked, is bounded where it is made. */
  readonly megabytes: number;
  /** For any file; for each megabyte of it; at most. */
  readonly seconds: { readonly first: number; readonly eachMegabyte: number; readonly most: number };
}

/** Own decisions; docs/rules/import.md, "Limits". @internal */
export const readingLimits: ReadingLimits = { table: heldTable, megabytes: 320, seconds: { first: 5, eachMegabyte: 3, most: 60 } };

/** Code is loaded in a tenth of a second; a machine that is very busy may take longer. */
const startSeconds = 30;
const pauseMs = 5;

/**
 * Reads files of strangers one after the other, each on a thread of its own with limits of memory and time: whatever is in one, the
 * program answers meanwhile and goes on afterwards. The rows come over in slices, and what waits for them is asked whether it still does.
 */
export function readTableApart(limits: ReadingLimits = readingLimits): ReadTable {
  let last: Promise<unknown> = Promise.resolve();
  return (bytes, watch = unwatched) => {
    const turn = last.then(() => readOne(bytes, watch, limits));
    last = turn.catch(() => undefined);
    return turn;
  };
}

async function readOne(bytes: Uint8Array, watch: Watch, limits: ReadingLimits): Promise<Table> {
  // Asked before the thread is made: whoever waited for their turn may be gone.
  await watch.step('Reading kilobytes', 0, kilobytes(bytes.length));
  const { port1: ours, port2: theirs } = new MessageChannel();
  const copy = ownCopy(bytes);
  const task: ReadingTask = { bytes: copy, limits: limits.table, port: theirs };
  const total = bytes.length;
  const worker = new Worker(new URL('./tableWorker.ts', import.meta.url), {
    workerData: task,
    transferList: [theirs, copy.buffer],
    resourceLimits: { maxOldGenerationSizeMb: limits.megabytes, maxYoungGenerationSizeMb: 32 },
  });
  let ended: Fault | undefined;
  worker.on('error', error => {
    ended = faultOf(error);
  });
  worker.on('exit', () => {
    ended ??= new Fault('program-fault', 'The thread that read the file ended.');
  });
  try {
    return await takeTable(ours, () => ended, watch, total, limits);
  } finally {
    ours.close();
    await worker.terminate();
  }
}

async function takeTable(
  port: MessagePort,
  hasEnded: () => Fault | undefined,
  watch: Watch,
  total: number,
  limits: ReadingLimits,
): Promise<Table> {
  let until = performance.now() + startSeconds * 1000;
  let hasBegun = false;
  let doneBytes = 0;
  const rows: TableRow[] = [];
  for (;;) {
    // Asked first: what was sent before the end is taken all the same.
    const ended = hasEnded();
    const message: ReadingMessage | undefined = receiveMessageOnPort(port)?.message;
    if (message === undefined) {
      if (ended !== undefined) throw ended;
      await setTimeout(pauseMs);
      if (performance.now() > until) throw tookTooLong(limits, total);
    } else if ('issues' in message) return tableOf(rows, message.issues);
    else if ('code' in message) throw new Fault(message.code, message.message);
    else {
      if (!hasBegun) until = performance.now() + allowedMs(limits, total);
      hasBegun = true;
      for (const row of message.rows) rows.push(row);
      doneBytes = message.doneBytes;
      await setImmediate();
    }
    await watch.step('Reading kilobytes', kilobytes(doneBytes), kilobytes(total));
  }
}

function tableOf(rows: readonly TableRow[], issues: readonly Issue<TableIssueCode>[]): Table {
  const [head, ...rest] = rows;
  if (head === undefined) throw new Fault('table-without-headings', 'The file is empty.');
  return { headings: head.cells, rows: rest, issues };
}

function allowedMs({ seconds: { first, eachMegabyte, most } }: ReadingLimits, bytes: number): number {
  return 1000 * Math.min(most, first + eachMegabyte * (bytes / 2 ** 20));
}

function tookTooLong(limits: ReadingLimits, bytes: number): Fault {
  const seconds = Math.round(allowedMs(limits, bytes) / 1000);
  return new Fault('file-took-too-long', `Reading was stopped after ${seconds} seconds, which is plenty for a file of its size.`);
}

function faultOf(error: unknown): Fault {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ERR_WORKER_OUT_OF_MEMORY') return new Fault('table-too-large', 'Reading the file needs more memory than a table may take.');
  return new Fault('program-fault', `Reading the file failed (${error instanceof Error ? error.name : typeof error}).`);
}

/** Bytes that can be given away: they may be a view on what others use. */
function ownCopy(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  return new Uint8Array(bytes);
}

function kilobytes(bytes: number): number {
  return Math.ceil(bytes / 1024);
}
