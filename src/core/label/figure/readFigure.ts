import type { Reading } from '#core/errors.ts';
import type { UnknownReason } from '#core/quantity/amount.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import type { Market, PrintedFigure } from '../label.ts';
import { type LabelIssue, type LabelIssueCode, labelIssue } from '../labelIssue.ts';
import type { PanelKey } from '../panelKeys.ts';
import { type Figure, type NoFigure, unitOf } from './figure.ts';
import { conversionFactor, units } from './figureUnits.ts';
import { decimalsOf, isDigit, placeOf, scanNumber } from './scanNumber.ts';

export type FigureReading = Reading<Figure | NoFigure, LabelIssueCode>;

/** A panel figure above this, in any unit, is a slip of the keyboard: a kilogram of salt holds 393,000 mg of sodium. */
const largestFigure = 10_000_000;
const largestPercent = 100_000;
const longestFigure = 200;

/**
 * Reads one figure of a panel as typed from the package. "470 mg 10%" is { value: 470, place: 1, percent: 10 }; "<1 g" is
 * { value: 1, lessThan: true }; "10%" alone has a percent and no value. Nothing is guessed: what cannot be read is no
 * figure, with an issue. Another unit than the key's is converted, with an issue. Never throws; linear in the text.
 */
export function readFigure(key: PanelKey, printed: PrintedFigure, market: Market, where: string): FigureReading {
  return typeof printed === 'number' ? readNumber(printed, where) : readWords(key, printed, market, where);
}

function readNumber(value: number, where: string): FigureReading {
  if (value >= 0 && value <= largestFigure) return { value: { kind: 'figure', value, place: placeOf(decimalsOf(value)) }, issues: [] };
  if (value < 0) return refuse('figure-negative', 'not-a-number', where, value, 'a number from 0 upward');
  return refuse('figure-out-of-bounds', 'not-a-number', where, value, `a number up to ${largestFigure}`);
}

interface Quantity {
  readonly value: number;
  readonly place: number;
  readonly unit: string;
  readonly lessThan: boolean;
}

function readWords(key: PanelKey, printed: string, market: Market, where: string): FigureReading {
  if (printed.length > longestFigure)
    return refuse('figure-not-readable', 'not-a-number', where, printed, `at most ${longestFigure} characters`);
  const words = printed.trim().toLowerCase();
  if (words === '' || words === '-' || words === '–' || words === '—')
    return refuse('figure-empty', 'not-printed', where, printed, 'a figure, or no entry at all where nothing is printed');
  if (words === '*') return { value: { kind: 'figure', percent: 2, percentLessThan: true }, issues: [] };
  if (words.startsWith('not a significant source')) return { value: { kind: 'figure', notSignificant: true }, issues: [] };

  const quantities: Quantity[] = [];
  let decimalComma = false;
  let lessThan = false;
  let at = 0;
  while (at < words.length) {
    const code = words.charCodeAt(at);
    if (isDigit(code) || ((code === 46 || code === 44) && isDigit(words.charCodeAt(at + 1)))) {
      const number = scanNumber(words, at, market === 'eu');
      if (number === undefined) return refuse('figure-out-of-bounds', 'not-a-number', where, printed, `a number up to ${largestFigure}`);
      at = skipBlanks(words, number.end);
      const unit = words[at] === '%' ? '%' : words.slice(at, wordEnd(words, at));
      if (unit !== '' && unit !== '%' && units[unit] === undefined) return refuseWord(unit, where, printed);
      at += unit.length;
      if (number.ambiguous && (unit === '' ? unitOf(key) : unit) !== 'g')
        return refuse('figure-ambiguous', 'not-legible', where, printed, 'a number without a mark for thousands');
      decimalComma ||= number.decimalComma;
      quantities.push({
        value: number.ambiguous ? cleanFloat(number.value / 1000) : number.value,
        place: number.ambiguous ? 0.001 : number.place,
        unit,
        lessThan,
      });
      lessThan = false;
    } else if (code === 60) {
      lessThan = true;
      at++;
    } else if (code === 45 || code === 0x2212) {
      return quantities.length === 0
        ? refuse('figure-negative', 'not-a-number', where, printed, 'a number from 0 upward')
        : refuse('figure-ambiguous', 'not-legible', where, printed, 'one number, not a span');
    } else if (isFiller(code)) {
      at++;
    } else {
      const end = wordEnd(words, at);
      const word = words.slice(at, end);
      const next = skipBlanks(words, end);
      if (word === 'less' && words.startsWith('than', next)) {
        lessThan = true;
        at = next + 4;
      } else if (word !== '' && dailyValueWords.has(word)) at = end;
      else return refuseWord(word, where, printed);
    }
  }
  if (lessThan) return refuse('figure-not-readable', 'not-a-number', where, printed, 'a number after "less than"');
  return figureFrom(key, quantities, decimalComma && market === 'us', where, printed);
}

function figureFrom(key: PanelKey, quantities: readonly Quantity[], oddComma: boolean, where: string, printed: string): FigureReading {
  const own = unitOf(key);
  let percent: Quantity | undefined;
  let amount: Quantity | undefined;
  let inOwnUnit = false;
  for (const quantity of quantities) {
    if (quantity.unit === '%') {
      if (percent !== undefined) return refuse('figure-ambiguous', 'not-legible', where, printed, 'one %DV');
      percent = quantity;
      continue;
    }
    const fits = quantity.unit === '' || units[quantity.unit] === own;
    if (amount !== undefined && inOwnUnit === fits)
      return refuse('figure-ambiguous', 'not-legible', where, printed, `one figure in ${own}`);
    if (amount === undefined || fits) {
      amount = quantity;
      inOwnUnit = fits;
    }
  }
  if (amount === undefined && percent === undefined)
    return refuse('figure-not-readable', 'not-a-number', where, printed, `a number in ${own}`);
  if (percent !== undefined && percent.value > largestPercent)
    return refuse('figure-out-of-bounds', 'not-a-number', where, printed, 'a %DV as a panel prints it');

  const issues: LabelIssue[] = [];
  if (oddComma) issues.push(labelIssue('decimal-comma', where, printed, 'a decimal point on a US panel; the comma was read as one'));
  const percentPart = percent === undefined ? {} : { percent: percent.value, ...(percent.lessThan ? { percentLessThan: true } : {}) };
  if (amount === undefined) return { value: { kind: 'figure', ...percentPart }, issues };

  const factor = inOwnUnit ? 1 : conversionFactor(units[amount.unit], own, key);
  if (factor === undefined) return refuse('unit-not-fitting', 'not-a-number', where, printed, `a figure in ${own}`);
  const value = factor === 1 ? amount.value : cleanFloat(amount.value * factor);
  if (value > largestFigure) return refuse('figure-out-of-bounds', 'not-a-number', where, printed, `a number up to ${largestFigure}`);
  if (factor !== 1 || !inOwnUnit) issues.push(labelIssue('unit-converted', where, printed, `${own}; converted to ${value} ${own}`));
  return {
    value: {
      kind: 'figure',
      value,
      place: factor === 1 ? amount.place : cleanFloat(amount.place * factor),
      ...(amount.lessThan ? { lessThan: true } : {}),
      ...(inOwnUnit ? {} : { converted: true }),
      ...percentPart,
    },
    issues,
  };
}

function refuse(code: LabelIssueCode, reason: UnknownReason, where: string, found: PrintedFigure, expected: string): FigureReading {
  return { value: { kind: 'no-figure', reason }, issues: [labelIssue(code, where, found, expected)] };
}

/** Letters that a tired eye takes for digits are told apart from nonsense: the package has to be read again. */
function refuseWord(word: string, where: string, printed: string): FigureReading {
  let looksLikeDigits = word !== '' && word.length <= 3;
  for (const letter of word) if (!'olisbz|'.includes(letter)) looksLikeDigits = false;
  return looksLikeDigits
    ? refuse('figure-letter-for-digit', 'not-legible', where, printed, `digits, not the letters "${word}"`)
    : refuse('figure-not-readable', 'not-a-number', where, printed, 'a number with its unit, a %DV, or "less than"');
}

const dailyValueWords: ReadonlySet<string> = new Set(['dv', 'vd', 'daily', 'value', 'of', 'the', 'nrv', 'ri']);

/** Blanks, brackets and marks that stand between the parts of a figure and say nothing. */
function isFiller(code: number): boolean {
  return isBlank(code) || code === 40 || code === 41 || code === 47 || code === 42 || code === 0x2020 || code === 59 || code === 44;
}

function isBlank(code: number): boolean {
  return code === 32 || code === 9 || code === 0xa0 || code === 0x2009 || code === 0x202f;
}

function skipBlanks(text: string, at: number): number {
  let end = at;
  while (isBlank(text.charCodeAt(end))) end++;
  return end;
}

/** The end of a run of letters, the vertical bar among them since it is a common misreading of 1. */
function wordEnd(text: string, at: number): number {
  let end = at;
  for (;;) {
    const code = text.charCodeAt(end);
    if ((code >= 97 && code <= 122) || code === 124 || code === 0xb5 || code === 0x3bc) end++;
    else return end;
  }
}
