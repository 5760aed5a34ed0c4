import Papa from 'papaparse';
import type { DatasetFile } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';
import { type DatasetLine, datasetLines } from './datasetLines.ts';
import type { DatasetReport } from './datasetReport.ts';

export interface CsvRecord {
  readonly line: number;
  /** The cell under a heading; empty where there is none. */
  readonly cell: (heading: string) => string;
}

/** A quoted cell with more lines than this has lost its closing quotation mark. */
const longestCellLines = 50;

/** The lines of a record whose quoted cell goes on over line ends. */
interface Open {
  readonly line: number;
  readonly lines: readonly string[];
}

/**
 * The records of a CSV file with headings in its first line, streamed. A record that never closes its quote, or holds more
 * cells than there are headings, is left out and named; the lines behind it are read.
 */
export async function* csvRecords(file: DatasetFile, watch: Watch, report: DatasetReport): AsyncGenerator<CsvRecord> {
  let columns: ReadonlyMap<string, number> | undefined;
  let open: Open | undefined;
  const recordOf = (line: number, cells: readonly string[]): CsvRecord | undefined => {
    if (columns === undefined) {
      columns = new Map(cells.map((heading, at) => [heading.trim(), at]));
      return undefined;
    }
    const known = columns;
    return { line, cell: heading => cells[known.get(heading) ?? -1] ?? '' };
  };
  const isTooLong = (cells: readonly string[]): boolean => columns !== undefined && cells.length > columns.size;
  const broken = ({ line, lines }: Open): DatasetLine[] => {
    report.add('quote-not-closed', line, 'a cell that opens with a quotation mark and never closes', 'a closing quotation mark');
    return lines.slice(1).map((text, at) => ({ line: line + 1 + at, text }));
  };
  for await (const lines of datasetLines(file, 'utf-8', watch)) {
    const waiting = lines.slice();
    for (let at = 0; at < waiting.length; at++) {
      const { line, text }: DatasetLine = waiting[at]!;
      const isOdd = quotes(text) % 2 === 1;
      if (open === undefined && isOdd) open = { line, lines: [text] };
      else if (open === undefined) {
        if (text === '') continue;
        const cells = cellsOf(text);
        if (isTooLong(cells)) report.add('row-too-long', line, `${cells.length} cells`, 'as many as headings; the row is left out');
        const record: CsvRecord | undefined = isTooLong(cells) ? undefined : recordOf(line, cells);
        if (record !== undefined) yield record;
      } else {
        const whole: Open = { line: open.line, lines: [...open.lines, text] };
        const cells = isOdd ? cellsOf(whole.lines.join('\n')) : undefined;
        const isBroken: boolean = cells === undefined ? whole.lines.length > longestCellLines : isTooLong(cells);
        open = cells === undefined && !isBroken ? whole : undefined;
        if (isBroken) waiting.splice(at + 1, 0, ...broken(whole));
        else if (cells !== undefined) {
          const record = recordOf(whole.line, cells);
          if (record !== undefined) yield record;
        }
      }
    }
  }
  if (open === undefined) return;
  for (const { line, text } of broken(open)) {
    const record = quotes(text) % 2 === 0 && text !== '' ? recordOf(line, cellsOf(text)) : undefined;
    if (record !== undefined) yield record;
  }
}

function quotes(text: string): number {
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) count++;
  return count;
}

/** Most lines of these files are plain or quoted throughout; only the rest needs the full grammar. */
function cellsOf(text: string): readonly string[] {
  if (!text.includes('"')) return text.split(',');
  if (text.startsWith('"') && text.endsWith('"')) {
    const cells = text.slice(1, -1).split('","');
    if (quotes(text) === 2 * cells.length) return cells;
  }
  return Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' }).data[0] ?? [];
}
