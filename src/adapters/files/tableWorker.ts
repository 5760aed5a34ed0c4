/** The thread that reads one file: bytes come in, rows go out in slices, at last what was noticed or the fault. */
import { type MessagePort, workerData } from 'node:worker_threads';
import type { TableIssueCode, TableRow } from '#app/ports.ts';
import { Fault, type FaultCode, type Issue } from '#core/errors.ts';
import { readRows } from './readTable.ts';
import type { TableLimits } from './tableLimits.ts';

export interface ReadingTask {
  readonly bytes: Uint8Array;
  readonly limits: TableLimits;
  readonly port: MessagePort;
}

export type ReadingMessage =
  /** The code is loaded and reading begins; then how many bytes of the file are read, with the rows that were found on the way. */
  | { readonly doneBytes: number; readonly rows: readonly TableRow[] }
  | { readonly issues: readonly Issue<TableIssueCode>[] }
  | { readonly code: FaultCode; readonly message: string };

/** Rows handed over at once: taking them over holds the program up for a few milliseconds. */
const rowsASlice = 100;

function readAll({ bytes, limits, port }: ReadingTask): void {
  const post = (message: ReadingMessage): void => port.postMessage(message);
  let rows: TableRow[] = [];
  let doneBytes = 0;
  const hand = (): void => {
    post({ doneBytes, rows });
    rows = [];
  };
  hand();
  try {
    const issues = readRows(
      bytes,
      row => {
        rows.push(row);
        if (rows.length === rowsASlice) hand();
      },
      limits,
      done => {
        doneBytes = done;
      },
    );
    hand();
    post({ issues });
  } catch (error) {
    if (error instanceof Fault) post({ code: error.code, message: error.message });
    // Only what it is: a message may hold words of the file.
    else post({ code: 'program-fault', message: `Reading the file failed (${error instanceof Error ? error.name : typeof error}).` });
  }
}

readAll(workerData);
