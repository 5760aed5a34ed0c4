import type { Item } from './item.ts';
import { nameOf } from './nameOf.ts';
import type { Token } from './token.ts';
import { functionHeads, functionWords, nutrientGroupWords, treatments } from './vocabulary.ts';

/** What kind of group a heading opens. */
export interface GroupKind {
  /** A singular function word heads one ingredient ("antioxidant: ascorbic acid"), a plural one the rest of its sentence. */
  readonly takesOne: boolean;
  /** It tells a treatment, not a share: its place in the list says nothing about its weight. */
  readonly outOfOrder: boolean;
}

/** What the words before a colon are. */
export interface Heading {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  /** "INGREDIENTS:" without an owner: a title. */
  readonly isTitle: boolean;
  /** The kind of group it opens; undefined for a component. */
  readonly group: GroupKind | undefined;
}

const longestHeading = 9;

/** Reads the collected words as a heading; undefined when they are too many to be one, and the colon is then a separator. */
export function headingAt(text: string, item: Item): Heading | undefined {
  const words = item.words.filter(word => word.kind === 'word' || word.kind === 'number');
  const last = words.at(-1);
  if (last === undefined || words.length > longestHeading) return undefined;
  const start = words[0]!.start;
  const end = Math.max(item.brackets.at(-1)?.end ?? 0, last.end);

  if (last.text === 'ingredients' || last.text === 'ingredient') {
    const owner = nameOf(text, item.words.slice(0, item.words.indexOf(last)));
    const isTitle = owner === '' || /^(?:the|list of|other|all)$/i.test(owner);
    return { name: isTitle ? nameOf(text, item.words) : owner, start, end, isTitle, group: undefined };
  }
  return { name: nameOf(text, item.words), start, end, isTitle: false, group: groupKind(words) };
}

/** What kind of group these words name, or undefined when they name a food: shared by "NAME: …" and "NAME (…)". */
export function groupKind(words: readonly Token[]): GroupKind | undefined {
  if (words.every(word => functionWords.has(word.text))) {
    const heads = words.filter(word => functionHeads.has(word.text));
    if (heads.length > 0) return { takesOne: !heads.some(head => head.text.endsWith('s')), outOfOrder: false };
  }
  const last = words.at(-1)!.text;
  const isTreatment =
    last === 'with' ||
    last === 'in' ||
    last === 'from' ||
    last === 'of' ||
    (last === 'by' && words.some(word => treatments.has(word.text)));
  if (isTreatment) return { takesOne: false, outOfOrder: true };
  return words.some(word => nutrientGroupWords.has(word.text)) ? { takesOne: false, outOfOrder: false } : undefined;
}
