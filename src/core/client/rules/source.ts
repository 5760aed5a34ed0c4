/**
 * Where a figure, a formula or a caution comes from. Every one that reaches a screen carries at least one.
 * Codes and their full references stand in `sources.ts`.
 */
export interface Source {
  readonly kind: 'guideline' | 'paper' | 'definition' | 'regulation' | 'common-practice' | 'own-rule';
  /** As it is shown: "KDOQI 2020". */
  readonly text: string;
  /** Where a line has little room: "KDIGO MBD 2017"; the text when missing. */
  readonly short?: string;
  /** The guideline's own grade: "1A", "2C", "OPINION", "practice point". */
  readonly grade?: string;
  /** Common practice whose text says that it is. */
  readonly saysPractice?: true;
  /** The figure or its grade is from memory: screens say "to be confirmed". */
  readonly toBeConfirmed?: true;
  /** Read in a later text that quotes the source, not in the source: screens say "as quoted". */
  readonly secondHand?: true;
}

/** The source as a sentence ends with it. `{ KDOQI 2020, 1C, to be confirmed }` reads "KDOQI 2020 (1C), to be confirmed". */
export function sourceWords({ kind, text, grade, saysPractice, toBeConfirmed, secondHand }: Source): string {
  const practice = kind === 'common-practice' && !saysPractice ? ', common practice' : '';
  return `${text}${grade === undefined ? '' : ` (${grade})`}${practice}${secondHand ? ', as quoted' : ''}${toBeConfirmed ? ', to be confirmed' : ''}`;
}

/**
 * Sources as a chart has them, in brackets with a space before: what was read, without what is still to be confirmed; nothing where
 * practice or a rule of our own is all there is. `[KDOQI 2020, 1C, to be confirmed]`: " (KDOQI 2020, 1C)".
 */
export function chartSources(sources: readonly Source[]): string {
  const named = sources.filter(({ kind }) => kind !== 'common-practice' && kind !== 'own-rule');
  const words = [...new Set(named.map(({ text, grade }) => `${chartWords(text)}${grade === undefined ? '' : `, ${grade}`}`))];
  return words.length === 0 ? '' : ` (${words.join('; ')})`;
}

/**
 * A sentence of the program as a chart has it: older practice stands in older texts, practice is what is common, and where a source was read is for the screen. A
 * guideline's "practice point" is its grade and stays.
 */
export function chartWords(sentence: string): string {
  return sentence
    .replace(/\b(O|o)lder practice\b/gu, '$1lder texts')
    .replace(/^Practice:/u, 'Common:')
    .replace(/, as quoted\b/gu, '');
}
