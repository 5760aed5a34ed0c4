import type { Table, TableIssueCode, TableRow } from '#app/ports.ts';
import type { Issue } from '#core/errors.ts';
import { Fault } from '#core/errors.ts';
import { refuseOtherWorkbooks } from './otherWorkbooks.ts';
import { readCsv } from './readCsv.ts';
import { readWorkbook } from './readWorkbook.ts';
import { heldTable, type TableLimits } from './tableLimits.ts';

/**
 * A table from the bytes of a CSV file or an XLSX workbook, read where it is called. Files of strangers are read on a thread of its own
 * (`readTableApart`).
 *
 * @throws Fault table-without-headings, table-too-large; workbook-encrypted, workbook-of-another-kind, workbook-not-readable.
 */
export function readTable(bytes: Uint8Array, limits: TableLimits = heldTable): Table {
  const rows: TableRow[] = [];
  const issues = readRows(
    bytes,
    row => rows.push(row),
    limits,
    () => undefined,
  );
  const [head, ...rest] = rows;
  if (head === undefined) throw new Fault('table-without-headings', 'The file is empty.');
  return { headings: head.cells, rows: rest, issues };
}

/** The same row by row, the headings first; `tell` is told how many bytes of the file are read. Gives what was noticed. */
export function readRows(
  bytes: Uint8Array,
  take: (row: TableRow) => void,
  limits: TableLimits,
  tell: (doneBytes: number) => void,
): readonly Issue<TableIssueCode>[] {
  if (isWorkbook(bytes)) return readWorkbook(bytes, take, limits, tell);
  refuseOtherWorkbooks(bytes);
  return readCsv(bytes, take, limits, tell);
}

/** XLSX files are ZIP archives and begin so, also an empty one. */
export function isWorkbook(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && ((bytes[2] === 3 && bytes[3] === 4) || (bytes[2] === 5 && bytes[3] === 6));
}
