import type { TableIssueCode, TableRow } from '#app/ports.ts';
import { Fault, type Issue } from '#core/errors.ts';
import { mergesOf } from './mergedCells.ts';
import { walkRows } from './sheetRows.ts';
import { CountedRows, farRight, mostColumns, TableIssues, type TableLimits } from './tableLimits.ts';
import { ZipParts } from './unpack.ts';
import { type Sheet, type Workbook, workbookOf } from './workbookParts.ts';

/**
 * Takes the rows of the first sheet of an XLSX file that holds anything, the headings first, as a table of text: what a cell shows is what
 * is read, but for rounding. A hidden sheet is read where no other holds anything. Merged cells hold their text in the first one only and a
 * formula its last result; both are told, and so are hidden rows and further sheets.
 *
 * @throws Fault table-without-headings, table-too-large, workbook-encrypted, workbook-of-another-kind, workbook-not-readable
 */
export function readWorkbook(
  bytes: Uint8Array,
  take: (row: TableRow) => void,
  limits: TableLimits,
  tell: (doneBytes: number) => void,
): readonly Issue<TableIssueCode>[] {
  const parts = new ZipParts(bytes);
  const workbook = workbookOf(parts);
  const filled = filledSheets(parts, workbook);
  const sheet = filled.next().value;
  if (sheet === undefined) throw new Fault('table-without-headings', 'The workbook has no sheet with anything in it.');
  const issues = new TableIssues();
  if (filled.next().value !== undefined) {
    const found = `${workbook.sheets.length} sheets`;
    issues.add({ code: 'more-than-one-sheet', place: {}, found, expected: `one; only "${sheet.name}" is read` });
  }
  readSheet(parts, workbook, sheet, new CountedRows(take, limits), issues, tell);
  return issues.all();
}

/** The sheets that hold anything, those that are shown first. */
function* filledSheets(parts: ZipParts, workbook: Workbook): Generator<Sheet, undefined> {
  const inOrder = [...workbook.sheets].sort((a, b) => Number(a.isHidden) - Number(b.isHidden));
  for (const sheet of inOrder) if (holdsAnything(parts, workbook, sheet)) yield sheet;
  return undefined;
}

function holdsAnything(parts: ZipParts, workbook: Workbook, sheet: Sheet): boolean {
  let isFilled = false;
  walkRows(parts, workbook, sheet.part, {
    cell: (_row, _column, text) => {
      isFilled = text.trim() !== '';
      return !isFilled;
    },
  });
  return isFilled;
}

function readSheet(
  parts: ZipParts,
  workbook: Workbook,
  sheet: Sheet,
  rows: CountedRows,
  issues: TableIssues,
  tell: (doneBytes: number) => void,
): void {
  const mergedIn = mergesOf(parts, sheet.part);
  let headings: readonly string[] | undefined;
  let hidden = 0;
  let cells: string[] = [];
  const placeOf = (row: number, column: number) => {
    const heading = headings?.[column - 1];
    return heading === undefined ? { row } : { row, heading };
  };
  const endRow = (row: number, isHidden: boolean): void => {
    const merged = mergedIn(row);
    const width = Math.max(headings?.length ?? 0, cells.length);
    for (const { column, master } of merged(width)) {
      const expected = 'a cell of its own; it is taken as empty';
      issues.add({ code: 'cell-merged', place: placeOf(row, column), found: `a cell merged with ${master}`, expected });
      if (column <= cells.length) cells[column - 1] = '';
    }
    const last = cells.findLastIndex(cell => cell.trim() !== '');
    const filled = cells.slice(0, last + 1);
    cells = [];
    if (last < 0) return;
    if (isHidden) hidden += 1;
    while (headings !== undefined && filled.length < headings.length) filled.push('');
    rows.add({ row, cells: filled });
    headings ??= filled;
  };
  walkRows(
    parts,
    workbook,
    sheet.part,
    {
      cell: (row, column, text, formula) => {
        if (column > mostColumns) {
          if (text.trim() !== '') issues.add(farRight(row, column));
          return true;
        }
        if (formula !== undefined)
          issues.add({
            code: 'cell-with-formula',
            place: placeOf(row, column),
            found: formula === '' ? 'a formula' : `=${formula}`,
            expected: 'the figure itself; the last result was read',
          });
        if (text === '') return true;
        while (cells.length < column) cells.push('');
        cells[column - 1] = text;
        return true;
      },
      endRow,
    },
    tell,
  );
  if (headings === undefined) throw new Fault('table-without-headings', 'The sheet is empty.');
  if (hidden > 0) {
    const found = `${hidden.toLocaleString('en-US')} hidden ${hidden === 1 ? 'row' : 'rows'}`;
    issues.add({ code: 'rows-hidden', place: {}, found, expected: 'rows that are shown; they are read as well' });
  }
}
