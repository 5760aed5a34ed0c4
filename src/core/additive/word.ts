import type { AdditiveRow } from './additiveTable.ts';
import type { LexiconNode } from './lexicon.ts';
import type { Stem } from './match.ts';

/** How a word may take part in an additive code. */
export type CodePart =
  /** "e450", "ins451i" */
  | 'whole'
  /** "e", "ins" before a number */
  | 'letter'
  /** "450", "500ii" */
  | 'number';

/** All that the finder asks about a word, apart from its place. */
export interface WordFacts {
  readonly text: string;
  /** False for separators. */
  readonly isWord: boolean;
  /** A word of the lexicon, or the plural of one. */
  readonly isKnown: boolean;
  /** Where the spellings that begin with it go on. */
  readonly spellings: LexiconNode | undefined;
  /** "sodium", "dipotassium", "calcium" … */
  readonly isCation: boolean;
  /** "mono", "di", "tri", "tetra" */
  readonly isCount: boolean;
  /** "mono", "pyro", "hexameta" …: goes together with the word behind it. */
  readonly isCountPrefix: boolean;
  readonly codePart: CodePart | undefined;
  readonly abbreviation: { readonly row: AdditiveRow; readonly needsNeighbor: boolean } | undefined;
  readonly stem: Stem | undefined;
  /** A name of an additive may start here: false for two words out of three, which are passed over. */
  readonly mayStart: boolean;
  /** The words it stands for, when it is no word of the lexicon but close to one. */
  readonly repair: readonly WordFacts[] | undefined;
}

/** What the finder walks over: the words of a statement, spelling mended, and the separators between them. */
export interface Word {
  /** Of a word, a number, or a separator: "," for comma, "(" and ")" for brackets of any kind, "." for what ends a clause. */
  readonly facts: WordFacts;
  readonly start: number;
  readonly end: number;
  /** The spelling was mended: the finding says "misspelled". */
  readonly repaired: boolean;
}
