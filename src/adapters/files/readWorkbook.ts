import ExcelJS from 'exceljs';
import type { Table, TableIssueCode, TableRow } from '#app/ports.ts';
import type { Issue } from '#core/errors.ts';
import { Fault } from '#core/errors.ts';

/** XLSX files are ZIP archives and begin so. */
export function isWorkbook(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

/**
 * Reads the first sheet of an XLSX file that holds anything as a table of text: what a cell shows is what is read.
 * Merged cells hold their text in the first one only and a formula its last result; both are told.
 *
 * @throws Fault file-not-readable, table-without-headings
 */
export async function readWorkbook(bytes: Uint8Array): Promise<Table> {
  const workbook = new ExcelJS.Workbook();
  try {
    // A buffer that holds the file alone: bytes may be a view on a larger one.
    await workbook.xlsx.load(new Uint8Array(bytes).buffer);
  } catch {
    throw new Fault('file-not-readable', 'The file begins like an XLSX workbook and cannot be read as one.');
  }
  const sheet = workbook.worksheets.find(({ actualRowCount }) => actualRowCount > 0);
  if (sheet === undefined) throw new Fault('table-without-headings', 'The workbook has no sheet with anything in it.');
  const issues: Issue<TableIssueCode>[] = [];
  if (workbook.worksheets.filter(({ actualRowCount }) => actualRowCount > 0).length > 1) {
    issues.push({
      code: 'more-than-one-sheet',
      place: {},
      found: `${workbook.worksheets.length} sheets`,
      expected: `one; only "${sheet.name}" is read`,
    });
  }
  const rows: TableRow[] = [];
  const width = sheet.columnCount;
  sheet.eachRow((sheetRow, row) => {
    const cells = Array.from({ length: width }, (_, index) => {
      const cell = sheetRow.getCell(index + 1);
      const heading = rows[0]?.cells[index];
      const place = heading === undefined ? { row } : { row, heading };
      if (cell.isMerged && cell.master.address !== cell.address) {
        issues.push({
          code: 'cell-merged',
          place,
          found: `a cell merged with ${cell.master.address}`,
          expected: 'a cell of its own; it is taken as empty',
        });
        return '';
      }
      if (cell.formula)
        issues.push({
          code: 'cell-with-formula',
          place,
          found: `=${cell.formula}`,
          expected: 'the figure itself; the last result was read',
        });
      return shown(cell);
    });
    if (cells.some(cell => cell.trim() !== '')) rows.push({ row, cells });
  });
  const [head, ...rest] = rows;
  if (head === undefined) throw new Fault('table-without-headings', 'The sheet is empty.');
  return { headings: head.cells, rows: rest, issues };
}

function shown(cell: ExcelJS.Cell): string {
  const value = cell.result ?? cell.value;
  if (value === null || value === undefined) return '';
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if (typeof value === 'object') return cell.text;
  return String(value);
}
