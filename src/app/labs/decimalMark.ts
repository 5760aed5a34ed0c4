import type { LabCell } from './labCells.ts';

/** What parts the decimals in a table. `undefined` where it shows both, or has a point before three digits and nothing tells what it parts. */
export type DecimalMark = '.' | ',' | undefined;

/** At the beginning of a cell alone: "see notes 1,2" is no figure. */
const withComma = /^[\s<>≤≥=(]*(?:[HLAC]{1,2}\s+)?\d+,\d{1,2}(?![\d,.])(?!\s*,)/u;
const withPoint = /^[\s<>≤≥=(]*(?:[HLAC]{1,2}\s+)?\d+\.\d{1,2}(?![\d,.])/u;
const inDoubt = /^[\s<>≤≥=(]*(?:[HLAC]{1,2}\s+)?[1-9]\d{0,2}\.\d{3}(?![\d,.])/u;

/**
 * A comma before one or two digits parts decimals, a point likewise. A table that shows neither is taken as one of the United States, whose comma parts
 * thousands. ["5,2", "1.250"]: a comma; ["5.2", "1,250"], ["1,250"]: a point; ["5.2", "3,1"]: both.
 */
export function decimalMarkOf(cells: readonly LabCell[]): DecimalMark {
  const figures = cells.flatMap(({ value, range, lower, upper }) => [value, range, lower, upper]);
  const isComma = figures.some(words => withComma.test(words));
  const isPoint = figures.some(words => withPoint.test(words));
  if (isComma) return isPoint ? undefined : ',';
  return !isPoint && figures.some(words => inDoubt.test(words)) ? undefined : '.';
}

/** The cell with every figure in digits and a decimal point. Where the table shows both marks it stays as written, and what has a comma is not read. */
export function withPoints(cell: LabCell, mark: DecimalMark): LabCell {
  const [value, range, lower, upper] = [cell.value, cell.range, cell.lower, cell.upper].map(words => pointed(words, mark));
  return { ...cell, value: value!, range: range!, lower: lower!, upper: upper! };
}

function pointed(words: string, mark: DecimalMark): string {
  // Left with a comma it is not read as a figure, and told.
  if (mark === undefined) return inDoubt.test(words) ? words.replace('.', ',') : words;
  const thousands = mark === '.' ? /(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})+(?![\d,])/gu : /(?<![\d.,])[1-9]\d{0,2}(?:\.\d{3})+(?![\d.])/gu;
  const bare = words.replace(thousands, digits => digits.replace(/[.,]/gu, ''));
  return mark === '.' ? bare : bare.replace(/(?<=\d),(?=\d)/gu, '.');
}
