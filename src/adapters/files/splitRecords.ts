import Papa from 'papaparse';
import { Fault } from '#core/errors.ts';

/** A record, as RFC 4180 calls a row of cells that may hold line breaks. */
export interface CsvRecord {
  readonly cells: readonly string[];
  /** What is odd about its quotation marks. */
  readonly quotes?: 'quote-not-closed' | 'quote-not-doubled';
}

/** A statement is a few kilobytes. A quoted cell that is still open behind so many characters has lost its closing quotation mark. */
const longestRecord = 1024 * 1024;

/**
 * A quote that never closes makes the splitter run far ahead, and its lines are then split once more. When that has cost
 * as much as reading the file so many times, quotes are taken for ordinary characters: a hostile file stays linear.
 */
const mostRereads = 4;
const leastCame = 64 * 1024;

/**
 * Splits the text of a CSV file into records as it comes: delimiter found out, line ends of three kinds, and a quote that never closes
 * spoils its own line only. However the text is cut into pieces, the records are the same.
 */
export class RecordSplitter {
  private held = '';
  private delimiter: string | undefined;
  /** Characters that came, and that were split more than once. */
  private came = 0;
  private reread = 0;

  /** The records that are whole with this piece. @throws Fault table-too-large for a line beyond 1 MiB. */
  push(piece: string): CsvRecord[] {
    this.came += piece.length;
    this.held += piece;
    // A carriage return at the end may be half of a line end.
    const end = this.held.endsWith('\r') ? this.held.length - 1 : this.held.length;
    const rest = this.held.slice(end);
    this.held = this.held.slice(0, end).replace(/\r\n?/g, '\n');
    const records = this.whole(false);
    this.held += rest;
    return records;
  }

  end(): CsvRecord[] {
    this.held = this.held.replace(/\r\n?/g, '\n');
    return this.whole(true);
  }

  private whole(isLast: boolean): CsvRecord[] {
    this.delimiter ??= delimiterOf(this.held, isLast || this.held.length > longestRecord);
    if (this.delimiter === undefined) return [];
    const records: CsvRecord[] = [];
    let start = 0;
    while (start < this.held.length) {
      const { records: found, end, spoiledEnd } = this.split(start, isLast);
      for (const record of found) records.push(record);
      start = end;
      if (spoiledEnd === undefined) break;
      this.reread += spoiledEnd - start;
      const lineEnd = this.held.indexOf('\n', start);
      records.push({ cells: this.firstRecord(this.held.slice(start, lineEnd)), quotes: 'quote-not-closed' });
      start = lineEnd + 1;
    }
    this.held = this.held.slice(start);
    if (this.held.length > longestRecord) throw tooLong();
    return records;
  }

  /** The records from `start` on; where one swallowed the lines behind it, up to there, and where it ended. */
  private split(start: number, isLast: boolean): { records: CsvRecord[]; end: number; spoiledEnd?: number } {
    const records: CsvRecord[] = [];
    let end = start;
    let spoiledEnd: number | undefined;
    const isPlain = this.reread > mostRereads * Math.max(this.came, leastCame);
    Papa.parse<string[]>(this.held.slice(start), {
      delimiter: this.delimiter!,
      newline: '\n',
      ...(isPlain ? { fastMode: true } : {}),
      step: ({ data, errors, meta }, parser) => {
        const cursor = start + meta.cursor;
        const mayGoOn = !isLast && cursor >= this.held.length && cursor - end <= longestRecord;
        // An odd quote and a line break in one record: the lines after it were swallowed.
        if (!mayGoOn && errors.length > 0 && data.some(cell => cell.includes('\n'))) spoiledEnd = cursor;
        if (mayGoOn || spoiledEnd !== undefined) {
          parser.abort();
          return;
        }
        if (cursor - end > longestRecord) throw tooLong();
        const odd = errors.at(-1)?.code;
        records.push({
          cells: data,
          ...(odd === undefined ? {} : { quotes: odd === 'MissingQuotes' ? 'quote-not-closed' : 'quote-not-doubled' }),
        });
        end = cursor;
      },
    });
    return { records, end, ...(spoiledEnd === undefined ? {} : { spoiledEnd }) };
  }

  private firstRecord(line: string): string[] {
    return Papa.parse<string[]>(line, { delimiter: this.delimiter!, newline: '\n', preview: 1 }).data[0] ?? [];
  }
}

function tooLong(): Fault {
  return new Fault('table-too-large', `The file has a row of more than ${longestRecord.toLocaleString('en-US')} characters.`);
}

/** The delimiter that stands most often outside quotes in the first line, a comma when there is none; undefined while that line has not ended. */
function delimiterOf(text: string, isEnough: boolean): string | undefined {
  const counts = new Map([',', ';', '\t'].map(delimiter => [delimiter, 0]));
  let quoted = false;
  let hasEnded = isEnough;
  for (const character of text.trimStart()) {
    if (character === '"') quoted = !quoted;
    else if (character === '\n' && !quoted) {
      hasEnded = true;
      break;
    } else if (!quoted && counts.has(character)) counts.set(character, counts.get(character)! + 1);
  }
  return hasEnded ? [...counts].reduce((best, next) => (next[1] > best[1] ? next : best))[0] : undefined;
}
