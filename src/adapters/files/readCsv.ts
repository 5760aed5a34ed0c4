import { TextDecoder } from 'node:util';
import type { TableIssueCode, TableRow } from '#app/ports.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { EncodingGuess } from './decodeText.ts';
import { type CsvRecord, RecordSplitter } from './splitRecords.ts';
import { CountedRows, farRight, mostColumns, TableIssues, type TableLimits, tooMany } from './tableLimits.ts';

/** Bytes that are decoded and split at once. */
const pieceBytes = 256 * 1024;

/** The rows of a CSV file as its bytes come, the headings first; what was noticed at the end. */
export class CsvRows {
  private readonly decoder: TextDecoder;
  private readonly splitter = new RecordSplitter();
  private readonly rows: CountedRows;
  private readonly issues = new TableIssues();
  private readonly limits: TableLimits;
  private records = 0;
  private hasHeadings = false;

  constructor(guess: EncodingGuess, take: (row: TableRow) => void, limits: TableLimits) {
    const { value: encoding, issues } = guess.end();
    this.decoder = new TextDecoder(encoding);
    for (const issue of issues) this.issues.add(issue);
    this.rows = new CountedRows(take, limits);
    this.limits = limits;
  }

  /** @throws Fault table-too-large */
  push(bytes: Uint8Array): void {
    this.add(this.splitter.push(this.decoder.decode(bytes, { stream: true })));
  }

  /** @throws Fault table-too-large; table-without-headings for a file without text. */
  end(): readonly Issue<TableIssueCode>[] {
    this.add(this.splitter.push(this.decoder.decode()));
    this.add(this.splitter.end());
    if (!this.hasHeadings) throw new Fault('table-without-headings', 'The file is empty.');
    return this.issues.all();
  }

  private add(records: readonly CsvRecord[]): void {
    for (const { cells, quotes } of records) {
      const row = ++this.records;
      if (row > this.limits.lines) throw tooMany(this.limits, 'lines');
      if (quotes !== undefined) this.issues.add(quoteIssue(row, quotes));
      if (!cells.some(cell => cell.trim() !== '')) continue;
      this.hasHeadings = true;
      if (cells.length > mostColumns) this.issues.add(farRight(row, cells.length));
      this.rows.add({ row, cells: cells.length > mostColumns ? cells.slice(0, mostColumns) : cells });
    }
  }
}

/**
 * Takes the rows of a CSV file, the headings first: encoding and delimiter are found out, quoted cells may hold line breaks, a quote that
 * never closes spoils its own line only. Gives what was noticed.
 *
 * @throws Fault table-without-headings for a file without text, table-too-large.
 */
export function readCsv(
  bytes: Uint8Array,
  take: (row: TableRow) => void,
  limits: TableLimits,
  tell: (doneBytes: number) => void,
): readonly Issue<TableIssueCode>[] {
  const guess = new EncodingGuess();
  for (const piece of pieces(bytes)) guess.take(piece);
  const rows = new CsvRows(guess, take, limits);
  let done = 0;
  for (const piece of pieces(bytes)) {
    rows.push(piece);
    done += piece.length;
    tell(done);
  }
  return rows.end();
}

function* pieces(bytes: Uint8Array): Iterable<Uint8Array> {
  for (let at = 0; at < bytes.length; at += pieceBytes) yield bytes.subarray(at, at + pieceBytes);
}

function quoteIssue(row: number, code: 'quote-not-closed' | 'quote-not-doubled'): Issue<TableIssueCode> {
  return code === 'quote-not-closed'
    ? { code, place: { row }, found: 'a cell that opens with a quotation mark and never closes', expected: 'a closing quotation mark' }
    : { code, place: { row }, found: 'a quotation mark inside a quoted cell', expected: 'two of them ("") inside a quoted cell' };
}
