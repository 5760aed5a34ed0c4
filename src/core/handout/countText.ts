import { syllable } from 'syllable';

/** The words of a text with their syllables. `longWords` have three syllables or more. */
export interface CountedText {
  readonly words: number;
  readonly syllables: number;
  readonly longWords: readonly string[];
}

const wordSplitter = new Intl.Segmenter('en', { granularity: 'word' });
const sentenceSplitter = new Intl.Segmenter('en', { granularity: 'sentence' });

/** "Check the label. Call us." is two. A text without a full stop is one. */
export function sentencesOf(text: string): readonly string[] {
  return [...sentenceSplitter.segment(text)]
    .map(({ segment }) => segment.trim())
    .filter(one => wordsOf(one).length > 0 || one.includes('\uFFFC'));
}

/**
 * Words with a letter or digit; what hyphens and strokes join is one word ("low-sodium", "1/2"), as Flesch counts (from memory).
 *
 * @internal
 */
export function wordsOf(text: string): readonly string[] {
  const words: string[] = [];
  let joins = false;
  for (const { segment, isWordLike } of wordSplitter.segment(text)) {
    if (isWordLike === true && joins && words.length > 0) words[words.length - 1] += `-${segment}`;
    else if (isWordLike === true) words.push(segment);
    joins = isWordLike === true ? false : /^[-‐‑/]$/.test(segment) && words.length > 0;
  }
  return words;
}

/**
 * Syllables of an English word: `potassium` 4, `kidney` 2. Figures, and abbreviations without a vowel ("mg", "690"), are one, as Flesch
 * counts (from memory). Counted by the `syllable` package; a test measures it against a pronouncing dictionary.
 *
 * @internal
 */
export function syllablesOf(word: string): number {
  if (/\d/.test(word) || !/[aeiouy]/i.test(word)) return 1;
  return Math.max(1, syllable(word));
}

/** "Sodium: up to 690 mg." is 5 words and 7 syllables. */
export function countText(text: string): CountedText {
  const words = wordsOf(text);
  const counted = words.map(syllablesOf);
  return {
    words: words.length,
    syllables: counted.reduce((sum, one) => sum + one, 0),
    longWords: [...new Set(words.filter((_, at) => counted[at]! >= 3).map(word => word.toLowerCase()))],
  };
}
