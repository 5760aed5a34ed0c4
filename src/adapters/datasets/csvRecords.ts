import Papa from 'papaparse';
import type { DatasetFile } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';
import { datasetLines } from './datasetLines.ts';
import type { DatasetReport } from './datasetReport.ts';

export interface CsvRecord {
  readonly line: number;
  /** The cell under a heading; empty where there is none. */
  readonly cell: (heading: string) => string;
}

/** A quoted cell with more lines than this has lost its closing quotation mark. */
const longestCellLines = 50;

/** The records of a CSV file with headings in its first line, streamed. A record that never closes its quote is left out and named. */
export async function* csvRecords(file: DatasetFile, watch: Watch, report: DatasetReport): AsyncGenerator<CsvRecord> {
  let columns: ReadonlyMap<string, number> | undefined;
  let open: { readonly line: number; readonly lines: string[] } | undefined;
  const recordOf = (line: number, text: string): CsvRecord | undefined => {
    const cells = cellsOf(text);
    if (columns === undefined) {
      columns = new Map(cells.map((heading, at) => [heading.trim(), at]));
      return undefined;
    }
    const known = columns;
    return { line, cell: heading => cells[known.get(heading) ?? -1] ?? '' };
  };
  for await (const lines of datasetLines(file, 'utf-8', watch)) {
    const waiting = lines.slice();
    for (let at = 0; at < waiting.length; at++) {
      const { line, text } = waiting[at]!;
      if (open === undefined && text === '') continue;
      const isOdd = quotes(text) % 2 === 1;
      if (open === undefined && !isOdd) {
        const record = recordOf(line, text);
        if (record !== undefined) yield record;
      } else if (open === undefined) open = { line, lines: [text] };
      else if (isOdd) {
        const record = recordOf(open.line, [...open.lines, text].join('\n'));
        open = undefined;
        if (record !== undefined) yield record;
      } else {
        open.lines.push(text);
        if (open.lines.length <= longestCellLines) continue;
        // The lines behind the broken one are records of their own.
        const { line: from, lines: swallowed } = open;
        report.add('quote-not-closed', from, 'a cell that opens with a quotation mark and never closes', 'a closing quotation mark');
        open = undefined;
        waiting.splice(at + 1, 0, ...swallowed.slice(1).map((one, index) => ({ line: from + 1 + index, text: one })));
      }
    }
  }
  if (open !== undefined)
    report.add('quote-not-closed', open.line, 'a cell that opens with a quotation mark and never closes', 'a closing quotation mark');
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
