import type { Token } from '#core/statement/text/token.ts';
import { boundAuxiliaries, clauseTail, fractionWords, numberWords, thresholdLead } from '#core/statement/text/vocabulary.ts';

/** "Contains 2% or less of", in all its wordings. */
export interface ThresholdClause {
  /** The first token behind the clause. */
  readonly end: number;
  readonly atMostPercent: number;
  /** The percent sign was typed as another character ("24 or less of"). */
  readonly damaged: boolean;
}

/**
 * "contains 2% or less of", "less than 1/10 of 1%", "<2%", "not over 2%", "two percent or less of each of the following:" at `at`.
 * 21 CFR 101.4(a)(2): the members may follow in any order, each at most the percentage.
 */
export function thresholdAt(tokens: readonly Token[], at: number): ThresholdClause | undefined {
  const from = leadEnd(tokens, at);
  const comparison = comparisonEnd(tokens, from);
  const quantity = percentAt(tokens, comparison);
  if (quantity === undefined) return undefined;
  const repeated = quantity.hasSign ? repetitionEnd(tokens, quantity.end) : quantity.end;
  const end = orLessEnd(tokens, repeated);
  const hasOrLess = end > repeated;
  if (comparison === from && !hasOrLess) return undefined;
  // "marinated up to 10% with water, salt" tells how much marinade there is, not how much of each.
  if (tokens[end]?.text === 'with') return undefined;
  if (quantity.hasSign) return { end: clauseTailEnd(tokens, end), atMostPercent: quantity.percent, damaged: false };
  // "24 or less of": the percent sign was typed as a 4. Without a sign only the full wording counts as a clause.
  if (!hasOrLess || tokens[end]?.text !== 'of') return undefined;
  const { percent } = quantity;
  const atMostPercent = percent >= 10 && percent % 10 === 4 ? Math.floor(percent / 10) : percent;
  return { end: clauseTailEnd(tokens, end), atMostPercent, damaged: true };
}

/** "and contains:" before the percentage. */
function leadEnd(tokens: readonly Token[], at: number): number {
  let i = at;
  for (let lead = 0; lead < 4; lead++) {
    const token = tokens[i];
    if (token?.kind === 'word' && thresholdLead.has(token.text)) i += 1;
    else if (token?.kind === 'colon' && i > at) i += 1;
    else break;
  }
  return i;
}

/**
 * "less than", "<", "up to", "at most", "a maximum of", "max.", every bound of `boundEnd`, and the slips "less then", "less that",
 * "less": `at` itself when there is none.
 */
function comparisonEnd(tokens: readonly Token[], at: number): number {
  const first = tokens[at];
  if (first?.kind === 'less-than') return at + 1;
  if (first?.kind !== 'word') return at;
  const second = tokens[at + 1];
  switch (first.text) {
    case 'less':
    case 'below':
    case 'under':
      return overThan(tokens, at + 1);
    case 'up':
      return second?.text === 'to' ? at + 2 : at;
    case 'most':
      return tokens[at - 1]?.text === 'at' ? at + 1 : at;
    case 'a':
      return isMaximum(second) && tokens[at + 2]?.text === 'of' ? at + 3 : at;
    case 'maximum':
      return second?.text === 'of' || second?.kind === 'colon' ? at + 2 : at + 1;
    case 'max':
      return second?.kind === 'period' || second?.text === 'of' ? at + 2 : at + 1;
    default:
      return boundEnd(tokens, at) ?? at;
  }
}

/**
 * The end of a "no" or "not" that bounds instead of denying: "no more than", "not over", "not exceeding", "not to exceed", "does not
 * exceed", "not in excess of". Undefined for any other "no" or "not", which says that nothing of it is there.
 */
export function boundEnd(tokens: readonly { readonly text: string }[], at: number): number | undefined {
  const from = boundAuxiliaries.has(tokens[at]?.text ?? '') ? at + 1 : at;
  const no = tokens[from]?.text;
  if (no !== 'no' && no !== 'not') return undefined;
  const second = tokens[from + 1]?.text ?? '';
  const third = tokens[from + 2]?.text;
  if (second === 'over' || second === 'above' || second === 'exceed' || second === 'exceeding') return from + 2;
  // "no more phosphates" denies; only "than" or a figure makes a bound of "more".
  if (second === 'more' || second === 'greater') {
    const end = overThan(tokens, from + 2);
    return end > from + 2 || /^\d/.test(third ?? '') ? end : undefined;
  }
  if (second === 'to' && third === 'exceed') return from + 3;
  return second === 'in' && third === 'excess' && tokens[from + 3]?.text === 'of' ? from + 4 : undefined;
}

function overThan(tokens: readonly { readonly text: string }[], at: number): number {
  const than = tokens[at]?.text;
  return than === 'than' || than === 'then' || than === 'that' ? at + 1 : at;
}

function isMaximum(token: Token | undefined): boolean {
  return token?.text === 'maximum' || token?.text === 'max';
}

/** "two percent (2%) or less": the number again in a bracket; or a letter typed into the sign, "2%R or less". */
function repetitionEnd(tokens: readonly Token[], at: number): number {
  const [first, second, third, fourth] = [tokens[at]?.kind, tokens[at + 1]?.kind, tokens[at + 2]?.kind, tokens[at + 3]?.kind];
  if (first === 'open' && second === 'number' && third === 'percent' && fourth === 'close') return at + 4;
  const isLetter = first === 'word' && tokens[at]!.text.length === 1;
  return isLetter && orLessEnd(tokens, at + 1) > at + 1 ? at + 1 : at;
}

/** "or less", "max.", and the slips "of less", "or less than" and "less of": `at` itself when there is none. */
function orLessEnd(tokens: readonly Token[], at: number): number {
  if (isMaximum(tokens[at])) return tokens[at]!.text === 'max' && tokens[at + 1]?.kind === 'period' ? at + 2 : at + 1;
  const first = tokens[at]?.text;
  const second = tokens[at + 1]?.text;
  if (first === 'less' && second === 'of') return at + 1;
  if ((first !== 'or' && first !== 'of') || second !== 'less') return at;
  return tokens[at + 2]?.text === 'than' ? at + 3 : at + 2;
}

/** The end of "of each of the following:" behind a clause. */
export function clauseTailEnd(tokens: readonly Token[], from: number): number {
  let i = from;
  for (;;) {
    const token = tokens[i];
    if (token === undefined) return i;
    if (token.kind === 'word' && clauseTail.has(token.text)) i += 1;
    else if (token.kind === 'colon' || (token.kind === 'mark' && i > from)) i += 1;
    else if (token.kind === 'semicolon' && tokens[i + 1]?.text === 'of') i += 2;
    else return i;
  }
}

export interface Percentage {
  readonly end: number;
  readonly percent: number;
  /** False for a bare number. */
  readonly hasSign: boolean;
}

/** A number with its percent sign or word: "2%", "1.5 percent", "two percent", "1/10 of 1%", "one half of one percent". */
export function percentAt(tokens: readonly Token[], at: number): Percentage | undefined {
  const number = numberAt(tokens, at);
  if (number === undefined) return undefined;
  const { end, value } = number;
  if (value < 1 && tokens[end]?.text === 'of') {
    const whole = numberAt(tokens, end + 1);
    return whole !== undefined && isPercentSign(tokens[whole.end])
      ? { end: whole.end + 1, percent: roundedUp(value * whole.value), hasSign: true }
      : undefined;
  }
  const hasSign = isPercentSign(tokens[end]);
  return { end: hasSign ? end + 1 : end, percent: value, hasSign };
}

/** "2", "1/10", "1/10th", "two", "one half". */
function numberAt(tokens: readonly Token[], at: number): { end: number; value: number } | undefined {
  const token = tokens[at];
  const value = token?.kind === 'number' ? parseNumber(token.text) : token?.kind === 'word' ? numberWords.get(token.text) : undefined;
  if (value === undefined || !Number.isFinite(value)) return undefined;
  if (tokens[at + 1]?.kind === 'slash') {
    const divisor = Number.parseFloat(tokens[at + 2]?.text ?? '');
    return divisor > 0 ? { end: at + 3, value: roundedUp(value / divisor) } : undefined;
  }
  const fraction = fractionWords.get(tokens[at + 1]?.text ?? '');
  return fraction === undefined ? { end: at + 1, value } : { end: at + 2, value: roundedUp(value * fraction) };
}

function isPercentSign(token: Token | undefined): boolean {
  return token !== undefined && (token.kind === 'percent' || token.text === 'percent' || token.text === 'pct');
}

/** Fractions to four decimals, outward, so that a third prints and reads again as the same number. */
function roundedUp(fraction: number): number {
  const tooFine = 1e-9;
  return Math.ceil(fraction * 1e4 - tooFine) / 1e4;
}

/** "1.60" and "0,5" are decimals, "2,000" is two thousand (a comma before one or two digits is never thousands). */
export function parseNumber(text: string): number {
  const normal = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(text) ? text.replaceAll(',', '') : text.replace(',', '.');
  return Number(normal);
}
