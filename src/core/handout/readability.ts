/** What a text counts to. Drug and food names inflate syllables: count with and without them. */
export interface TextCounts {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
}

/**
 * Flesch-Kincaid grade of an English text; undefined for one without words or sentences. 120 words, 12 sentences, 156 syllables: 3.65.
 * 100, 5, 150: 9.91 (too hard: a handout aims at grade 5 to 6, from memory). Source: Kincaid 1975.
 */
export function fleschKincaidGrade({ words, sentences, syllables }: TextCounts): number | undefined {
  if (!(words > 0 && sentences > 0)) return undefined;
  return (0.39 * words) / sentences + (11.8 * syllables) / words - 15.59;
}
