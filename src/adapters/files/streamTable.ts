import type { TableBlocks, TableRow } from '#app/ports.ts';
import { EncodingGuess } from './decodeText.ts';
import { refuseOtherWorkbooks } from './otherWorkbooks.ts';
import { filePieces, isPlainFile } from './readBytes.ts';
import { CsvRows } from './readCsv.ts';
import { isWorkbook } from './readTable.ts';
import { streamedTable } from './tableLimits.ts';

/**
 * A CSV file of any size to be gone through in blocks, as often as one likes; undefined for what cannot: a pipe, a workbook. The first time its
 * encoding is found out, for which it is read once more.
 *
 * @throws Fault file-not-found, file-not-readable, workbook-of-another-kind, workbook-encrypted
 */
export async function streamTable(path: string): Promise<(() => TableBlocks) | undefined> {
  if (!(await isPlainFile(path))) return undefined;
  for await (const piece of filePieces(path)) {
    if (isWorkbook(piece)) return undefined;
    refuseOtherWorkbooks(piece);
    break;
  }
  return () => blocks(path);
}

async function* blocks(path: string): TableBlocks {
  const guess = new EncodingGuess();
  for await (const piece of filePieces(path)) guess.take(piece);
  let block: TableRow[] = [];
  const rows = new CsvRows(guess, row => block.push(row), streamedTable);
  for await (const piece of filePieces(path)) {
    rows.push(piece);
    yield block;
    block = [];
  }
  const issues = rows.end();
  yield block;
  return issues;
}
