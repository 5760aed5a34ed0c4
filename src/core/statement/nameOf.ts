import type { Token } from './tokenize.ts';

/** The name as printed: words joined as they stood, marks and "organic" left out, blanks folded. */
export function nameOf(text: string, words: readonly Token[]): string {
  if (words.length === 0) return '';
  if (words.length === 1) return text.slice(words[0]!.start, words[0]!.end);
  let name = '';
  let previous: Token | undefined;
  for (const word of words) {
    if (previous !== undefined) {
      const isBlank = word.start === previous.end + 1 && text.charCodeAt(previous.end) === 32;
      const gap = isBlank ? ' ' : text.slice(previous.end, word.start);
      name +=
        isBlank && word.kind !== 'percent' && !previous.hyphenAfter
          ? ' '
          : gap === '' || gap === '-'
            ? gap
            : previous.hyphenAfter && !/[([{]/.test(gap)
              ? '- '
              : word.kind === 'percent'
                ? ''
                : ' ';
    }
    name += text.slice(word.start, word.end);
    previous = word;
  }
  return name;
}
