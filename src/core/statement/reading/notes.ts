import type { Token } from '#core/statement/text/token.ts';
import {
  functionWords,
  leadSubjects,
  leadVerbs,
  noteEndings,
  noteOpeners,
  noteWords,
  purposeNouns,
  purposeVerbs,
} from '#core/statement/text/vocabulary.ts';
import { allergenRunEnd } from './remarks.ts';
import { thresholdAt } from './threshold.ts';

/** True when the words of a bracket say why, whence or how, and name no part: "(to retain moisture)", "(preservative)". */
export function isNote(inside: readonly Token[]): boolean {
  const [first, second] = inside;
  if (first === undefined) return true;
  if (first.text === 'to' && purposeVerbs.has(second?.text ?? '')) return true;
  if (first.text === 'contains' || first.text === 'contain') return allergenRunEnd(inside, second?.kind === 'colon' ? 2 : 1) !== undefined;
  if (leadSentenceLength(inside) === inside.length) return true;
  if (inside.some(token => token.kind === 'comma' || token.kind === 'semicolon')) return false;
  if (purposeVerbs.has(first.text) && inside.length > 1) return true;
  if (first.text === 'made' && second?.text === 'from') return true;
  // "(not more than 2% silicon dioxide)" names what is there.
  if (noteOpeners.has(first.text) && !(first.text === 'a' && inside.length === 1)) return thresholdAt(inside, 0) === undefined;
  return noteEndings.has(inside.at(-1)!.text) || inside.every(isNoteToken);
}

function isNoteToken({ kind, text }: Token): boolean {
  if (kind === 'word') return functionWords.has(text) || noteWords.has(text);
  return kind === 'dash' || kind === 'number' || kind === 'ampersand';
}

/** An item that is a note to the one before it: "BHT, | to preserve freshness". */
export function isNoteItem(words: readonly Token[]): boolean {
  return words.length > 1 && opensNote(words, 0);
}

/** Where a note without brackets begins: "potassium sorbate | as a preservative"; 0 when there is none. */
export function noteStart(words: readonly Token[]): number {
  for (let index = 1; index < words.length - 1; index++) if (opensNote(words, index)) return index;
  return 0;
}

function opensNote(words: readonly Token[], index: number): boolean {
  const next = words[index + 1]!;
  switch (words[index]!.text) {
    case 'to':
      return purposeVerbs.has(next.text);
    case 'for':
    case 'as':
      return purposeNouns.has(next.text);
    case 'added':
    case 'used':
      return next.text === 'to' || next.text === 'for' || next.text === 'as';
    case 'if':
      return true;
    // "lecithin - an emulsifier", but "grade A milk" and "vitamin A".
    case 'a':
    case 'an':
      return (index === 0 || isBehindDash(words, index)) && endsInFunction(words, index + 1);
    // "uncured bacon - no nitrates added", but "yellow no. 5" and, in front, a claim.
    case 'no':
      return index > 0 && next.kind === 'word' && words.slice(index + 1, index + longestNote).some(word => word.text === 'added');
    default:
      return false;
  }
}

/** The bound keeps the reading of endless items linear. */
const longestNote = 12;

function endsInFunction(words: readonly Token[], from: number): boolean {
  return words.length - from <= longestNote && words.slice(from).every(word => functionWords.has(word.text));
}

function isBehindDash(words: readonly Token[], index: number): boolean {
  const before = words[index - 1]!;
  return before.kind === 'dash' || before.hyphenAfter;
}

/** A note that says under which condition its ingredient is there at all: "annatto (if colored)". */
export function isCondition(words: readonly Token[]): boolean {
  return words[0]?.text === 'if';
}

/** "freshness preserved by BHT", "colored with annatto": how many words lead in. */
export function leadSentenceLength(words: readonly Token[], from = 0, to = words.length): number {
  const last = Math.min(from + 3, to - 1);
  for (let index = from; index < last; index++) {
    const next = words[index + 1]!.text;
    if (leadVerbs.has(words[index]!.text) && (next === 'by' || next === 'with'))
      return index === from || leadSubjects.has(words[from]!.text) ? index - from + 2 : 0;
  }
  return 0;
}
