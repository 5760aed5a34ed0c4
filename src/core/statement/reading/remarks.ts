import type { Token } from '#core/statement/text/token.ts';
import {
  allergenNames,
  allergenWords,
  claimOpeners,
  facilityLead,
  facilityOpeners,
  facilityWords,
} from '#core/statement/text/vocabulary.ts';
import type { Remark } from '../statement.ts';
import { mayContainAt } from './clauses.ts';
import type { ReadState } from './readState.ts';
import { boundEnd } from './threshold.ts';

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
      if (!allergenWords.has(text)) return undefined;
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

/** "manufactured on shared equipment …", "this product may have been made in a facility that …": the end of the sentence. */
export function facilityEnd(tokens: readonly Token[], at: number): number | undefined {
  let verb = at;
  while (verb - at < longestFacilityLead && facilityLead.has(tokens[verb]?.text ?? '')) verb += 1;
  if (!facilityOpeners.has(tokens[verb]?.text ?? '')) return undefined;
  const preposition = tokens[verb + 1]?.text;
  if (preposition !== 'in' && preposition !== 'on' && preposition !== 'using' && preposition !== 'at') return undefined;
  for (let i = verb + 2; i < verb + 9; i++) {
    const token = tokens[i];
    if (token === undefined || token.kind === 'comma' || token.kind === 'colon') return undefined;
    if (facilityWords.has(token.text)) return sentenceEnd(tokens, i);
  }
  return undefined;
}
const longestFacilityLead = 7;

/** Where the sentence ends that goes on at `at`: at its period, or at the end of the bracket that it stands in. */
function sentenceEnd(tokens: readonly Token[], at: number): number {
  let depth = 0;
  let i = at;
  for (; i < tokens.length; i++) {
    const { kind } = tokens[i]!;
    if (kind === 'period') return i;
    if (kind === 'open') depth += 1;
    else if (kind === 'close') {
      if (depth === 0) return i;
      depth -= 1;
    }
  }
  return i;
}

/** "no preservatives added", "product of …", "adds a trivial amount of sodium", "contains no …": the end of the claim. */
export function claimEnd(tokens: readonly Token[], at: number): number | undefined {
  if (isCode(tokens, at)) return tokens.at(-1)!.kind === 'period' ? tokens.length - 1 : tokens.length;
  return isClaim(tokens, at) ? phraseEnd(tokens, at) : undefined;
}

/** A phrase ends at any separator or bracket, so that nothing behind it is lost: "no MSG, sodium phosphates". */
export function phraseEnd(tokens: readonly Token[], at: number): number {
  let i = at;
  while (!endsPhrase(tokens[i])) i += 1;
  return i;
}

function endsPhrase(token: Token | undefined): boolean {
  if (token === undefined) return true;
  const { kind } = token;
  return kind === 'open' || kind === 'close' || kind === 'period' || kind === 'comma' || kind === 'semicolon';
}

function isClaim(tokens: readonly Token[], at: number): boolean {
  const word = tokens[at]?.text ?? '';
  const next = tokens[at + 1]?.text ?? '';
  const third = tokens[at + 2];
  switch (word) {
    case 'product':
      return next === 'of';
    case 'certified':
      return next === 'by' || next === 'gluten' || next === 'kosher' || next === 'non' || (next === 'organic' && third?.text === 'by');
    case 'contains':
    case 'contain':
      return (next === 'no' && boundEnd(tokens, at + 1) === undefined) || next === 'zero';
    case 'free':
      return next === 'of' || next === 'from';
    case 'gluten':
      return next === 'free' && endsPhrase(third);
    case 'not':
      return next === 'a' || next === 'from';
    case 'ingredients':
      return next === 'not' || (next === 'may' && third?.text === 'vary');
    case 'no':
      return tokens[at + 1]?.kind === 'word' && boundEnd(tokens, at) === undefined && next !== 'salt';
    default:
      return claimOpeners.has(word) && tokens[at + 1]?.kind === 'word';
  }
}

/** "… ENZYMES. 730264": a number of the maker's own behind the last period; no name has so many digits and no letter. */
function isCode(tokens: readonly Token[], at: number): boolean {
  if (tokens[at]?.kind !== 'number' || tokens[at - 1]?.kind !== 'period' || tokens.length - at > longestCode) return false;
  let digits = 0;
  for (let i = at; i < tokens.length; i++) {
    const { kind, text } = tokens[i]!;
    if (kind === 'number') digits += text.length;
    else if (kind !== 'dash' && !(kind === 'period' && i === tokens.length - 1)) return false;
  }
  return digits >= 4;
}
const longestCode = 6;
