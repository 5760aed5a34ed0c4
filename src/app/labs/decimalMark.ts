import type { LabCell } from './labCells.ts';

/** What parts the decimals in a table. `undefined` where it shows both. */
export type DecimalMark = '.' | ',' | undefined;

const withComma = /(?:^|\s|[<>=])\d+,\d{1,2}(?![\d,.])/u;
const withPoint = /(?:^|\s|[<>=])\d+\.\d{1,2}(?![\d,.])/u;

/**
 * A comma before one or two digits parts decimals, a point likewise. A table that shows neither is taken as one of the United States, whose comma parts
 * thousands. ["5,2", "1.250"]: a comma; ["5.2", "1,250"], ["1,250"]: a point; ["5.2", "3,1"]: both.
 */
export function decimalMarkOf(cells: readonly LabCell[]): DecimalMark {
  const figures = cells.flatMap(({ value, range, lower, upper }) => [value, range, lower, upper]);
  const isComma = figures.some(words => withComma.test(words));
  return isComma && figures.some(words => withPoint.test(words)) ? undefined : isComma ? ',' : '.';
}

/** The cell with every figure in digits and a decimal point. Where the table shows both marks it stays as written, and what has a comma is not read. */
export function withPoints(cell: LabCell, mark: DecimalMark): LabCell {
  const [value, range, lower, upper] = [cell.value, cell.range, cell.lower, cell.upper].map(words => pointed(words, mark));
  return { ...cell, value: value!, range: range!, lower: lower!, upper: upper! };
}

function pointed(words: string, mark: DecimalMark): string {
  if (mark === undefined) return words;
  const thousands = mark === '.' ? /(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})+(?![\d,])/gu : /(?<![\d.,])[1-9]\d{0,2}(?:\.\d{3})+(?![\d.])/gu;
  const bare = words.replace(thousands, digits => digits.replace(/[.,]/gu, ''));
  return mark === '.' ? bare : bare.replace(/(?<=\d),(?=\d)/gu, '.');
}
