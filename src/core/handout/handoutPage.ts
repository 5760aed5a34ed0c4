import type { Day } from '#core/quantity/calendarDay.ts';
import type { HandoutPart, Language } from './handout.ts';

/** A handout as its reader sees it, as plain data: every text is plain text, every figure has its unit. Files and screens only dress it. */
export interface HandoutPage {
  readonly id: string;
  readonly language: Language;
  readonly title: Line;
  /** For whom, by whom, from which day, each a line. */
  readonly about: readonly Line[];
  readonly writtenOn: Day;
  readonly sections: readonly Section[];
}

export type SectionId = HandoutPart | 'notes' | 'call' | 'ask' | 'cautions';

/** The fridge page, where there is one, is the first. */
export interface Section {
  readonly id: SectionId;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type Block =
  | { readonly kind: 'text'; readonly line: Line }
  | { readonly kind: 'heading'; readonly line: Line }
  /** `points`, `steps` in their order, `boxes` to check off, `call` that must not be missed. */
  | { readonly kind: 'list'; readonly look: 'points' | 'steps' | 'boxes' | 'call'; readonly lines: readonly Line[] }
  | { readonly kind: 'table'; readonly caption: string; readonly head: readonly string[]; readonly rows: readonly TableRow[] }
  | { readonly kind: 'foods'; readonly rows: readonly FoodRow[] };

export interface TableRow {
  readonly head: Line;
  readonly cells: readonly string[];
}

/** A food that fits, with what to keep to. Rows are no sentences: the reading grade does not count them. */
export interface FoodRow {
  readonly foodId: string;
  readonly name: string;
  readonly maker?: string;
  /** "In a meal: 4 slices (56 g)". */
  readonly keepTo: readonly string[];
  /** "Sodium in it: 180 mg", "Close: check the package". */
  readonly told: readonly string[];
}

/** One or more sentences, told apart by who wrote them: the program's are translated and graded, the author's are left alone. */
export interface Line {
  readonly by: 'program' | 'author';
  readonly runs: readonly Run[];
}

/** Words of a line. A food's name stands apart: it is graded and translated with no sentence. `english` are words with no translation. */
export interface Run {
  readonly kind: 'words' | 'food' | 'outside' | 'english';
  readonly text: string;
}
