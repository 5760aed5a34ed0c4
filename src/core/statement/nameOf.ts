import type { Token } from './tokenize.ts';

/** The name as printed: words joined as they stood, marks and "organic" left out, blanks folded. */
export function nameOf(text: string, words: readonly Token[]): string {
  let name = '';
  let previous: Token | undefined;
  for (const word of words) {
    if (previous !== undefined) {
      const gap = text.slice(previous.end, word.start);
      name += gap === '' || gap === '-' ? gap : previous.hyphenAfter && !/[([{]/.test(gap) ? '- ' : word.kind === 'percent' ? '' : ' ';
    }
    name += text.slice(word.start, word.end);
    previous = word;
  }
  return name;
}
