import type { Token } from './tokenize.ts';
import { allergenNames, allergenWords, facilityOpeners, facilityWords } from './vocabulary.ts';

/**
 * Word patterns of a statement that are no ingredients. Each function looks at the tokens from `at` and gives
 * where the pattern ends, or undefined. All are linear and look ahead a bounded number of tokens, except the two
 * remark readers, which run to the end of their sentence.
 */

export interface ThresholdClause {
  readonly end: number;
  readonly atMostPercent: number;
  /** The percent sign was typed as another character ("24 or less of"). */
  readonly damaged: boolean;
}

const clauseLead = new Set(['and', 'also', 'plus', 'contains', 'contain', 'containing', 'with', 'each', 'at']);
const clauseTail = new Set(['of', 'each', 'the', 'following', 'by', 'weight', 'ingredients', 'ingredient', 'these', 'all', 'any', 'total']);
const numberWords: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, five: 5, half: 0.5 };

/**
 * "contains 2% or less of", "less than 1/10 of 1%", "<2%", "two percent or less of each of the following:".
 * 21 CFR 101.4(a)(2): the members may follow in any order, each at most the percentage.
 */
export function thresholdAt(tokens: readonly Token[], at: number): ThresholdClause | undefined {
  let i = at;
  for (let lead = 0; lead < 4; lead++) {
    const token = tokens[i];
    if (token?.kind === 'word' && clauseLead.has(token.text)) i += 1;
    else if (token?.kind === 'colon' && i > at) i += 1;
    else break;
  }
  const first = tokens[i];
  if (first === undefined) return undefined;

  let lessBefore = false;
  if (first.kind === 'less-than') {
    i += 1;
    lessBefore = true;
  } else if (first.kind === 'word' && (first.text === 'less' || first.text === 'no' || first.text === 'not' || first.text === 'under')) {
    i += 1;
    if (first.text === 'no' || first.text === 'not') {
      if (tokens[i]?.text !== 'more') return undefined;
      i += 1;
    }
    const than = tokens[i];
    if (than?.kind === 'word' && (than.text === 'than' || than.text === 'then' || than.text === 'that')) i += 1;
    lessBefore = true;
  }

  const quantity = percentAt(tokens, i);
  if (quantity === undefined) return undefined;
  i = quantity.end;
  const lessAfter = tokens[i]?.text === 'or' && tokens[i + 1]?.text === 'less';
  if (lessAfter) i += 2;
  if (!lessBefore && !lessAfter) return undefined;
  let damaged = false;
  let percent = quantity.percent;
  if (!quantity.hasSign) {
    // "24 or less of": the percent sign was typed as a 4. Without a sign only the full wording counts as a clause.
    if (!lessAfter || tokens[i]?.text !== 'of') return undefined;
    damaged = true;
    if (percent >= 10 && percent % 10 === 4) percent = Math.floor(percent / 10);
  }
  return { end: skipTail(tokens, i), atMostPercent: percent, damaged };
}

function skipTail(tokens: readonly Token[], from: number): number {
  let i = from;
  while (i < tokens.length) {
    const token = tokens[i]!;
    if (token.kind === 'word' && clauseTail.has(token.text)) i += 1;
    else if (token.kind === 'colon' || (token.kind === 'mark' && i > from)) i += 1;
    else if (token.kind === 'semicolon' && tokens[i + 1]?.text === 'of') i += 2;
    else break;
  }
  return i;
}

/** A number with its percent sign or word: "2%", "1.5 percent", "1/10 of 1%", "two percent". */
function percentAt(tokens: readonly Token[], at: number): { end: number; percent: number; hasSign: boolean } | undefined {
  const token = tokens[at];
  if (token === undefined) return undefined;
  let value = token.kind === 'number' ? parseNumber(token.text) : token.kind === 'word' ? numberWords[token.text] : undefined;
  if (value === undefined || !Number.isFinite(value)) return undefined;
  let i = at + 1;
  if (tokens[i]?.kind === 'slash') {
    const divisor = Number.parseFloat(tokens[i + 1]?.text ?? '');
    if (!(divisor > 0)) return undefined;
    value /= divisor;
    i += 2;
    if (tokens[i]?.text === 'of') {
      const whole = percentAt(tokens, i + 1);
      return whole?.hasSign ? { end: whole.end, percent: value * whole.percent, hasSign: true } : undefined;
    }
  }
  const sign = tokens[i];
  const hasSign =
    sign !== undefined && (sign.kind === 'percent' || (sign.kind === 'word' && (sign.text === 'percent' || sign.text === 'pct')));
  return { end: hasSign ? i + 1 : i, percent: value, hasSign };
}

/** "1.60" and "0,5" are decimals, "2,000" is two thousand (a comma before one or two digits is never thousands). */
export function parseNumber(text: string): number {
  const normal = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(text) ? text.replaceAll(',', '') : text.replace(',', '.');
  return Number(normal);
}

/** "(contains) one or more of the following:", "at least one of": gives the end of the words. */
export function oneOrMoreAt(tokens: readonly Token[], at: number): number | undefined {
  let i = at;
  while (tokens[i]?.kind === 'word' && i - at < 5 && isOneOrMoreLead(tokens[i]!.text)) i += 1;
  const head = tokens[i]?.text;
  if (head !== 'one') return undefined;
  const second = tokens[i + 1]?.text;
  if ((second === 'or' || second === 'and/or') && (tokens[i + 2]?.text === 'more' || tokens[i + 2]?.text === 'both')) i += 3;
  else if (second === 'of' && tokens[i + 2]?.text === 'the') i += 1;
  else return undefined;
  return skipTail(tokens, i);
}

function isOneOrMoreLead(word: string): boolean {
  return (
    word === 'contains' ||
    word === 'contain' ||
    word === 'containing' ||
    word === 'and' ||
    word === 'and/or' ||
    word === 'with' ||
    word === 'any' ||
    word === 'from' ||
    word === 'at' ||
    word === 'least' ||
    word === 'of'
  );
}

/** "may contain", "may also include (one or more of)": gives the end of the words. */
export function mayContainAt(tokens: readonly Token[], at: number): number | undefined {
  if (tokens[at]?.text !== 'may' && tokens[at]?.text !== 'can') return undefined;
  let i = at + 1;
  while (tokens[i]?.kind === 'mark' || tokens[i]?.text === 'also') i += 1;
  const verb = tokens[i]?.text;
  if (verb !== 'contain' && verb !== 'contains' && verb !== 'include' && verb !== 'includes') return undefined;
  i += 1;
  const choice = oneOrMoreAt(tokens, i);
  if (choice !== undefined) return choice;
  return skipTail(tokens, i);
}

/** "contains up to 12% of a solution of": the percent is of the raw meat (9 CFR 317.2(e)(2)). */
export function solutionAt(tokens: readonly Token[], at: number): { end: number; percent: number } | undefined {
  let i = at;
  while (i - at < 6 && tokens[i]?.kind === 'word' && solutionLead.has(tokens[i]!.text)) i += 1;
  const quantity = percentAt(tokens, i);
  if (quantity === undefined || !quantity.hasSign) return undefined;
  i = quantity.end;
  while (tokens[i]?.kind === 'word' && solutionMiddle.has(tokens[i]!.text)) i += 1;
  if (tokens[i]?.text !== 'solution') return undefined;
  i += 1;
  while (tokens[i]?.kind === 'colon' || tokens[i]?.text === 'of' || tokens[i]?.text === 'containing' || tokens[i]?.text === 'consisting')
    i += 1;
  return { end: i, percent: quantity.percent };
}
const solutionLead = new Set([
  'contains',
  'containing',
  'contain',
  'with',
  'enhanced',
  'injected',
  'marinated',
  'up',
  'to',
  'approximately',
  'about',
  'and',
  'added',
  'an',
  'a',
]);
const solutionMiddle = new Set(['of', 'a', 'an', 'added', 'flavor', 'flavoring', 'seasoning', 'brine', 'marinade', 'water']);

/**
 * The end of a run of allergen names that starts at `at` and goes on to the end of the sentence, the bracket or the
 * text; undefined as soon as a word stands in it that no allergen line holds ("contains: milk, salt").
 */
export function allergenRunEnd(tokens: readonly Token[], at: number): number | undefined {
  let i = at;
  let named = false;
  let depth = 0;
  for (; i < tokens.length; i++) {
    const token = tokens[i]!;
    if (token.kind === 'word') {
      if (named && mayContainAt(tokens, i) !== undefined) break;
      if (named && facilityEnd(tokens, i) !== undefined) break;
      if (!allergenWords.has(token.text)) {
        const glued = splitGluedAllergen(token.text);
        if (!glued) return undefined;
        named = true;
        break;
      }
      if (allergenNames.has(token.text)) named = true;
    } else if (token.kind === 'period' || token.kind === 'semicolon') {
      break;
    } else if (token.kind === 'open') depth += 1;
    else if (token.kind === 'close') {
      if (depth === 0) break;
      depth -= 1;
    } else if (token.kind === 'number' || token.kind === 'percent') return undefined;
  }
  return named ? i : undefined;
}

/** "SOYMAY CONTAIN": the next remark is glued to the last allergen. */
function splitGluedAllergen(word: string): boolean {
  return word.endsWith('may') && allergenNames.has(word.slice(0, -3));
}

/** "manufactured on shared equipment …", "made in a facility that …": the end of the sentence. */
export function facilityEnd(tokens: readonly Token[], at: number): number | undefined {
  if (!facilityOpeners.has(tokens[at]?.text ?? '')) return undefined;
  const preposition = tokens[at + 1]?.text;
  if (preposition !== 'in' && preposition !== 'on' && preposition !== 'using' && preposition !== 'at') return undefined;
  for (let i = at + 2; i < at + 9; i++) {
    const token = tokens[i];
    if (token === undefined || token.kind === 'comma' || token.kind === 'colon') return undefined;
    if (facilityWords.has(token.text)) return sentenceEnd(tokens, i);
  }
  return undefined;
}

export function sentenceEnd(tokens: readonly Token[], at: number): number {
  let i = at;
  while (i < tokens.length && tokens[i]!.kind !== 'period') i += 1;
  return i;
}

const claimOpeners = new Set(['no', 'adds', 'does', 'keep', 'distributed', 'this', 'these', 'percent']);

/** "no preservatives added", "product of …", "adds a trivial amount of sodium", "contains no …": the end of the sentence. */
export function claimEnd(tokens: readonly Token[], at: number): number | undefined {
  const word = tokens[at]?.text ?? '';
  const next = tokens[at + 1]?.text ?? '';
  const isClaim =
    (claimOpeners.has(word) && tokens[at + 1]?.kind === 'word' && !(word === 'no' && (next === 'more' || next === 'salt'))) ||
    (word === 'product' && next === 'of') ||
    (word === 'certified' && (next === 'by' || next === 'gluten' || next === 'kosher' || next === 'non')) ||
    ((word === 'contains' || word === 'contain') && (next === 'no' || next === 'zero')) ||
    (word === 'free' && (next === 'of' || next === 'from')) ||
    (word === 'not' && (next === 'a' || next === 'from')) ||
    (word === 'ingredients' && next === 'not');
  if (!isClaim) return undefined;
  let i = at;
  // A claim ends at any separator or bracket, so that nothing behind it is lost: "no MSG, sodium phosphates".
  while (i < tokens.length) {
    const kind = tokens[i]!.kind;
    if (kind === 'open' || kind === 'close' || kind === 'period' || kind === 'comma' || kind === 'semicolon') break;
    i += 1;
  }
  return i;
}
