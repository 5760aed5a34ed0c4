import { mayContainAt } from './clauses.ts';
import type { ReadState } from './level.ts';
import type { Remark } from './statement.ts';
import type { Token } from './token.ts';
import { allergenNames, allergenWords, claimOpeners, facilityOpeners, facilityWords } from './vocabulary.ts';

/** Keeps what goes from the cursor to `end` as a remark and goes on behind it. */
export function addRemark(state: ReadState, kind: Remark['kind'], end: number): void {
  const start = state.tokens[state.at]!.start;
  const stop = state.tokens[end - 1]!.end;
  state.remarks.push({ kind, text: state.text.slice(start, stop), start, end: stop });
  state.at = end;
}

/** No package lists more allergens; the bound keeps the reading linear when many runs of them end in another word. */
const longestAllergenRun = 300;

/**
 * The end of a run of allergen names that starts at `at` and goes on to the end of the sentence, the bracket or the
 * text; undefined as soon as a word stands in it that no allergen line holds ("contains: milk, salt").
 */
export function allergenRunEnd(tokens: readonly Token[], at: number): number | undefined {
  let named = false;
  let depth = 0;
  let i = at;
  for (; i < tokens.length; i++) {
    const { kind, text } = tokens[i]!;
    if (i - at > longestAllergenRun) return undefined;
    if (kind === 'word') {
      if (named && (mayContainAt(tokens, i) !== undefined || facilityEnd(tokens, i) !== undefined)) return i;
      if (!allergenWords.has(text)) return isGluedAllergen(text) ? i : undefined;
      if (allergenNames.has(text)) named = true;
    } else if (kind === 'number' || kind === 'percent') return undefined;
    else if (kind === 'period' || kind === 'semicolon') break;
    else if (kind === 'open') depth += 1;
    else if (kind === 'close') {
      if (depth === 0) break;
      depth -= 1;
    }
  }
  return named ? i : undefined;
}

/** "SOYMAY CONTAIN": the next remark is glued to the last allergen. */
function isGluedAllergen(word: string): boolean {
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

/** "no preservatives added", "product of …", "adds a trivial amount of sodium", "contains no …": the end of the claim. */
export function claimEnd(tokens: readonly Token[], at: number): number | undefined {
  if (!isClaim(tokens, at)) return undefined;
  // A claim ends at any separator or bracket, so that nothing behind it is lost: "no MSG, sodium phosphates".
  let i = at;
  for (; i < tokens.length; i++) {
    const { kind } = tokens[i]!;
    if (kind === 'open' || kind === 'close' || kind === 'period' || kind === 'comma' || kind === 'semicolon') break;
  }
  return i;
}

function isClaim(tokens: readonly Token[], at: number): boolean {
  const next = tokens[at + 1]?.text ?? '';
  const word = tokens[at]?.text ?? '';
  switch (word) {
    case 'product':
      return next === 'of';
    case 'certified':
      return next === 'by' || next === 'gluten' || next === 'kosher' || next === 'non';
    case 'contains':
    case 'contain':
      return next === 'no' || next === 'zero';
    case 'free':
      return next === 'of' || next === 'from';
    case 'not':
      return next === 'a' || next === 'from';
    case 'ingredients':
      return next === 'not';
    case 'no':
      return tokens[at + 1]?.kind === 'word' && next !== 'more' && next !== 'salt';
    default:
      return claimOpeners.has(word) && tokens[at + 1]?.kind === 'word';
  }
}
