import type { Token } from '#core/statement/text/token.ts';
import { footnoteWords } from '#core/statement/text/vocabulary.ts';

/** A footnote that is only "organic …" has at most so many words: "*ORGANIC" ends a list, "*ORGANIC OATS, …" is an ingredient. */
const longestOrganicNote = 6;

/** True when a footnote follows the mark that stands before `at`; `isFirst` when no name has been begun before it. */
export function isFootnote(tokens: readonly Token[], at: number, isFirst: boolean): boolean {
  const next = tokens[at];
  if (next?.kind !== 'word' || !footnoteWords.has(next.text) || onlyMarksBefore(tokens, at)) return false;
  const previous = tokens[at - 2]?.kind;
  const startsSentence = previous === undefined || previous === 'period' || previous === 'mark' || previous === 'close' || isFirst;
  if (next.text === 'organic' || next.text === 'an' || next.text === 'a' || next.text === 'non')
    return startsSentence && isShortSentence(tokens, at);
  return startsSentence || next.text !== 'not';
}

function onlyMarksBefore(tokens: readonly Token[], at: number): boolean {
  let before = at - 2;
  while (before >= 0 && tokens[before]!.kind === 'mark') before -= 1;
  return before < 0;
}

/** A sentence of a few words without a list, at the end of the text or before another mark, or of hardly any word. */
function isShortSentence(tokens: readonly Token[], at: number): boolean {
  let end = at;
  while (end < tokens.length && tokens[end]!.kind !== 'period') {
    const { kind } = tokens[end]!;
    if (end - at >= longestOrganicNote || kind === 'comma' || kind === 'open') return false;
    end += 1;
  }
  return end >= tokens.length - 1 || tokens[end + 1]?.kind === 'mark' || end - at <= 3;
}

/** A footnote runs to the end of its sentence; in a bracket no further than the next closing one. */
export function footnoteEnd(tokens: readonly Token[], at: number, inBracket: boolean): number {
  let i = at;
  while (i < tokens.length && tokens[i]!.kind !== 'period' && !(inBracket && tokens[i]!.kind === 'close')) i += 1;
  return i;
}
