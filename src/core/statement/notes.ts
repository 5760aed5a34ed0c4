import { allergenRunEnd } from './remarks.ts';
import type { Token } from './token.ts';
import { functionWords, leadSubjects, leadVerbs, noteOpeners, noteWords, purposeNouns, purposeVerbs } from './vocabulary.ts';

/** True when the words of a bracket say why, whence or how, and name no part: "(to retain moisture)", "(preservative)". */
export function isNote(inside: readonly Token[]): boolean {
  const [first, second] = inside;
  if (first === undefined) return true;
  if (first.text === 'to' && purposeVerbs.has(second?.text ?? '')) return true;
  if (first.text === 'contains' || first.text === 'contain') return allergenRunEnd(inside, second?.kind === 'colon' ? 2 : 1) !== undefined;
  if (leadSentenceLength(inside) === inside.length) return true;
  if (inside.some(token => token.kind === 'comma' || token.kind === 'semicolon')) return false;
  if (purposeVerbs.has(first.text) && inside.length > 1) return true;
  if (noteOpeners.has(first.text) && !(first.text === 'a' && inside.length === 1)) return true;
  return inside.every(isNoteToken);
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
  const next = words[index + 1]!.text;
  switch (words[index]!.text) {
    case 'to':
      return purposeVerbs.has(next);
    case 'for':
    case 'as':
      return purposeNouns.has(next);
    case 'added':
    case 'used':
      return next === 'to' || next === 'for' || next === 'as';
    default:
      return false;
  }
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
