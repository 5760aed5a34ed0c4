import Papa from 'papaparse';
import type { Table, TableIssueCode, TableRow } from '#app/ports.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { decodeText } from './decodeText.ts';

/**
 * A quote that never closes makes the splitter run far ahead, and its lines are then split once more. When that has cost
 * as much as reading the file so many times, quotes are taken for ordinary characters: a hostile file stays linear.
 */
const mostRereads = 8;

interface QuoteTrouble {
  /** Index of the record. */
  readonly record: number;
  readonly code: 'quote-not-closed' | 'quote-not-doubled';
}

/**
 * A table from the bytes of a CSV file: encoding and delimiter are found out, quoted cells may hold line breaks, a
 * quote that never closes spoils its own line only.
 *
 * @throws Fault table-without-headings for a file without text, or one that is not a text file.
 */
export function readTable(bytes: Uint8Array): Table {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04) {
    throw new Fault('table-without-headings', 'This is a workbook or another packed file; save the sheet as CSV first.');
  }
  const { value, issues: encodingIssues } = decodeText(bytes);
  const text = value.replace(/\r\n?/g, '\n');
  const { records, quotes } = splitRecords(text, delimiterOf(text));

  const first = records.findIndex(holdsAnything);
  if (first < 0) throw new Fault('table-without-headings', 'The file is empty.');
  const rows: TableRow[] = [];
  for (let at = first + 1; at < records.length; at += 1) {
    const cells = records[at]!;
    if (holdsAnything(cells)) rows.push({ row: at + 1, cells });
  }
  return { headings: records[first]!, rows, issues: [...encodingIssues, ...quotes.map(quoteIssue)] };
}

/** The delimiter that stands most often outside quotes in the first line; a comma when there is none. */
function delimiterOf(text: string): string {
  const counts = new Map([',', ';', '\t'].map(delimiter => [delimiter, 0]));
  let quoted = false;
  for (const character of text.trimStart()) {
    if (character === '"') quoted = !quoted;
    else if (character === '\n' && !quoted) break;
    else if (!quoted && counts.has(character)) counts.set(character, counts.get(character)! + 1);
  }
  return [...counts].reduce((best, next) => (next[1] > best[1] ? next : best))[0];
}

function splitRecords(text: string, delimiter: string): { records: string[][]; quotes: QuoteTrouble[] } {
  const records: string[][] = [];
  const quotes: QuoteTrouble[] = [];
  let start = 0;
  let reread = 0;
  while (start < text.length) {
    const from = start;
    let spoiledEnd: number | undefined;
    Papa.parse<string[]>(text.slice(from), {
      delimiter,
      newline: '\n',
      ...(reread > mostRereads * text.length ? { fastMode: true } : {}),
      step: ({ data, errors, meta }, parser) => {
        // An odd quote and a line break in one record: the lines after it were swallowed.
        if (errors.length > 0 && data.some(cell => cell.includes('\n'))) {
          spoiledEnd = from + meta.cursor;
          parser.abort();
          return;
        }
        for (const { code } of errors.slice(-1)) {
          quotes.push({ record: records.length, code: code === 'MissingQuotes' ? 'quote-not-closed' : 'quote-not-doubled' });
        }
        records.push(data);
        start = from + meta.cursor;
      },
    });
    if (spoiledEnd === undefined) break;
    reread += spoiledEnd - start;
    const lineEnd = text.indexOf('\n', start);
    quotes.push({ record: records.length, code: 'quote-not-closed' });
    records.push(firstRecord(text.slice(start, lineEnd), delimiter));
    start = lineEnd + 1;
  }
  return { records, quotes };
}

function firstRecord(text: string, delimiter: string): string[] {
  return Papa.parse<string[]>(text, { delimiter, newline: '\n', preview: 1 }).data[0] ?? [];
}

function holdsAnything(cells: readonly string[]): boolean {
  return cells.some(cell => cell.trim() !== '');
}

function quoteIssue({ record, code }: QuoteTrouble): Issue<TableIssueCode> {
  const row = record + 1;
  return code === 'quote-not-closed'
    ? { code, place: { row }, found: 'a cell that opens with a quotation mark and never closes', expected: 'a closing quotation mark' }
    : { code, place: { row }, found: 'a quotation mark inside a quoted cell', expected: 'two of them ("") inside a quoted cell' };
}
