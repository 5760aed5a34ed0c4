import type { Token } from '#core/statement/text/token.ts';

/** The name as printed: words joined as they stood, marks and brackets between them left out, blanks folded. */
export function nameOf(text: string, words: readonly Token[]): string {
  if (words.length === 0) return '';
  let name = text.slice(words[0]!.start, words[0]!.end);
  for (let index = 1; index < words.length; index++) {
    const word = words[index]!;
    name += joint(text, words[index - 1]!, word) + text.slice(word.start, word.end);
  }
  return name;
}

/** What joins two words in a name: nothing, a blank, a hyphen, or the hyphen of a line break. */
function joint(text: string, before: Token, word: Token): string {
  const gap = text.slice(before.end, word.start);
  if (gap === '' || gap === '-') return gap;
  if (before.hyphenAfter && !/[([{]/.test(gap)) return '- ';
  return word.kind === 'percent' ? '' : ' ';
}

/** The words of a bracket as a note: separators left out. */
export function noteText(text: string, inside: readonly Token[]): string {
  return nameOf(text, inside.filter(isNamePart));
}

function isNamePart({ kind }: Token): boolean {
  return kind === 'word' || kind === 'number' || kind === 'percent' || kind === 'ampersand' || kind === 'slash';
}
