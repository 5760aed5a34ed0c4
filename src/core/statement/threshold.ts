import type { Token } from './token.ts';
import { clauseTail, numberWords, thresholdLead } from './vocabulary.ts';

/** "Contains 2% or less of", in all its wordings. */
export interface ThresholdClause {
  /** The first token behind the clause. */
  readonly end: number;
  readonly atMostPercent: number;
  /** The percent sign was typed as another character ("24 or less of"). */
  readonly damaged: boolean;
}

/**
 * "contains 2% or less of", "less than 1/10 of 1%", "<2%", "two percent or less of each of the following:" at `at`.
 * 21 CFR 101.4(a)(2): the members may follow in any order, each at most the percentage.
 */
export function thresholdAt(tokens: readonly Token[], at: number): ThresholdClause | undefined {
  const from = leadEnd(tokens, at);
  const comparison = comparisonEnd(tokens, from);
  const quantity = percentAt(tokens, comparison);
  if (quantity === undefined) return undefined;
  const lessBefore = comparison > from;
  const lessAfter = tokens[quantity.end]?.text === 'or' && tokens[quantity.end + 1]?.text === 'less';
  if (!lessBefore && !lessAfter) return undefined;
  const end = lessAfter ? quantity.end + 2 : quantity.end;
  if (quantity.hasSign) return { end: clauseTailEnd(tokens, end), atMostPercent: quantity.percent, damaged: false };
  // "24 or less of": the percent sign was typed as a 4. Without a sign only the full wording counts as a clause.
  if (!lessAfter || tokens[end]?.text !== 'of') return undefined;
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

/** "less than", "no more than", "<", and the slips "less then", "less that", "less": `at` itself when there is none. */
function comparisonEnd(tokens: readonly Token[], at: number): number {
  const first = tokens[at];
  if (first?.kind === 'less-than') return at + 1;
  if (first?.kind !== 'word') return at;
  let i = at + 1;
  if (first.text === 'no' || first.text === 'not') {
    if (tokens[i]?.text !== 'more') return at;
    i += 1;
  } else if (first.text !== 'less' && first.text !== 'under') return at;
  const than = tokens[i]?.text;
  return than === 'than' || than === 'then' || than === 'that' ? i + 1 : i;
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

/** A number with its percent sign or word: "2%", "1.5 percent", "1/10 of 1%", "two percent". */
export function percentAt(tokens: readonly Token[], at: number): { end: number; percent: number; hasSign: boolean } | undefined {
  const token = tokens[at];
  if (token === undefined) return undefined;
  const value = token.kind === 'number' ? parseNumber(token.text) : token.kind === 'word' ? numberWords.get(token.text) : undefined;
  if (value === undefined || !Number.isFinite(value)) return undefined;
  if (tokens[at + 1]?.kind !== 'slash') return withSign(tokens, at + 1, value);
  const divisor = Number.parseFloat(tokens[at + 2]?.text ?? '');
  if (!(divisor > 0)) return undefined;
  if (tokens[at + 3]?.text !== 'of') return withSign(tokens, at + 3, value / divisor);
  const whole = percentAt(tokens, at + 4);
  return whole?.hasSign ? { end: whole.end, percent: (value / divisor) * whole.percent, hasSign: true } : undefined;
}

function withSign(tokens: readonly Token[], at: number, percent: number): { end: number; percent: number; hasSign: boolean } {
  const sign = tokens[at];
  const hasSign = sign?.kind === 'percent' || (sign?.kind === 'word' && (sign.text === 'percent' || sign.text === 'pct'));
  return { end: hasSign ? at + 1 : at, percent, hasSign };
}

/** "1.60" and "0,5" are decimals, "2,000" is two thousand (a comma before one or two digits is never thousands). */
export function parseNumber(text: string): number {
  const normal = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(text) ? text.replaceAll(',', '') : text.replace(',', '.');
  return Number(normal);
}
