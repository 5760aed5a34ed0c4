import { numberText } from './cellText.ts';
import { broken, type ZipParts } from './unpack.ts';
import { walkXml } from './walkXml.ts';
import { CellText, unescaped, type Workbook } from './workbookParts.ts';

export interface RowsWalk {
  /** A cell with its text as shown; `formula` where it has one, empty where it shares that of another. The walk goes on while it gives true. */
  readonly cell: (row: number, column: number, text: string, formula: string | undefined) => boolean;
  readonly endRow?: (row: number, isHidden: boolean) => void;
}

/** The last row and column of a sheet: XFD1048576 (a limit of spreadsheets). */
const lastRow = 1_048_576;
const lastColumn = 16_384;
const longestFormula = 200;

/** Walks through the cells of a sheet, row by row (ECMA-376 part 1, 18.3.1). @throws Fault workbook-not-readable */
export function walkRows(parts: ZipParts, workbook: Workbook, part: string, walk: RowsWalk, tell?: (packedBytes: number) => void): void {
  let row = 0;
  let column = 0;
  let isHidden = false;
  let isInData = false;
  let type = 'n';
  let style = 0;
  let value = '';
  let formula: string | undefined;
  let inside: 'v' | 'f' | undefined;
  let inline = '';
  const inlineText = new CellText(whole => {
    inline = whole;
  });

  const openRow = (attribute: (name: string) => string | undefined): void => {
    const given = attribute('r');
    const next = given === undefined ? row + 1 : Number(given);
    if (!Number.isInteger(next) || next <= row || next > lastRow) throw broken('its rows are not in order');
    row = next;
    column = 0;
    isHidden = ['1', 'true', 'on'].includes(attribute('hidden') ?? '');
  };
  const openCell = (attribute: (name: string) => string | undefined): void => {
    const given = attribute('r');
    const next = given === undefined ? column + 1 : columnOf(given, row);
    if (next <= column || next > lastColumn) throw broken('its cells are not in order');
    column = next;
    type = attribute('t') ?? 'n';
    style = Number(attribute('s') ?? 0);
    value = '';
    inline = '';
    formula = undefined;
  };
  const shown = (): string => {
    switch (type) {
      case 's':
        return sharedText(workbook, value);
      case 'inlineStr':
        return inline;
      case 'b':
        return value === '1' ? 'TRUE' : value === '0' ? 'FALSE' : value;
      case 'd':
        return /^\d{4}-\d\d-\d\d(?=T|$)/.exec(value)?.[0] ?? value;
      case 'str':
      case 'e':
        return unescaped(value);
      default:
        return value === '' ? '' : numberText(value, workbook.formats[style], workbook.dates);
    }
  };

  walkXml(
    parts,
    part,
    {
      open: (name, attribute) => {
        if (name === 'sheetData') isInData = true;
        else if (!isInData) return true;
        else if (name === 'row') openRow(attribute);
        else if (name === 'c') {
          if (row === 0) throw broken('it has a cell outside of rows');
          openCell(attribute);
        } else if (name === 'v') inside = 'v';
        else if (name === 'f') {
          inside = 'f';
          formula = '';
        } else inlineText.open(name);
        return true;
      },
      text: piece => {
        if (inside === 'v') value += piece;
        else if (inside === 'f') formula = `${formula}${piece}`.slice(0, longestFormula);
        else if (isInData) inlineText.add(piece);
      },
      close: name => {
        if (!isInData) return true;
        if (name === 'v' || name === 'f') inside = undefined;
        else if (name === 'c') return walk.cell(row, column, shown(), formula);
        else if (name === 'row') walk.endRow?.(row, isHidden);
        else if (name === 'sheetData') return false;
        else inlineText.close(name, 'is');
        return true;
      },
    },
    tell,
  );
}

function sharedText({ texts }: Workbook, value: string): string {
  const text = /^\d{1,9}$/.test(value.trim()) ? texts[Number(value)] : undefined;
  if (text === undefined) throw broken('a cell names a text that is not there');
  return text;
}

/** "B7" in row 7 is column 2. */
function columnOf(reference: string, row: number): number {
  const [, letters, digits] = /^([A-Z]{1,3})(\d{1,7})$/.exec(reference) ?? [];
  if (letters === undefined || Number(digits) !== row) throw broken('its cells are not in order');
  return columnNumber(letters);
}

/** "A" is 1, "XFD" 16,384. */
export function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters) number = number * 26 + letter.charCodeAt(0) - 64;
  return number;
}
