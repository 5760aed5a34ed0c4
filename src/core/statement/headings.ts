import { nameOf } from './nameOf.ts';
import type { Item } from './readItem.ts';
import type { Token } from './tokenize.ts';
import { functionHeads, functionWords, processHeads } from './vocabulary.ts';

/** What the words before a colon are. */
export type Heading =
  | { readonly kind: 'list-of-ingredients' | 'component'; readonly name: string; readonly start: number; readonly end: number }
  | {
      readonly kind: 'group';
      readonly name: string;
      readonly start: number;
      readonly end: number;
      /** A singular function word heads one ingredient ("antioxidant: ascorbic acid"), a plural one the rest of its sentence. */
      readonly takesOne: boolean;
      /** It tells a treatment, not a share: its place in the list says nothing about its weight. */
      readonly outOfOrder: boolean;
    };

const longestHeading = 9;

/** Reads the collected words as a heading; undefined when they are too many to be one, and the colon is then a separator. */
export function headingAt(text: string, item: Item): Heading | undefined {
  const words = item.words.filter(word => word.kind === 'word' || word.kind === 'number');
  if (words.length === 0 || words.length > longestHeading) return undefined;
  const start = words[0]!.start;
  const end = Math.max(item.brackets.at(-1)?.end ?? 0, words.at(-1)!.end);
  const last = words.at(-1)!.text;
  const name = nameOf(text, item.words);

  if (last === 'ingredients' || last === 'ingredient') {
    const owner = item.words.slice(0, item.words.indexOf(words.at(-1)!));
    const rest = nameOf(text, owner);
    const isBare = rest === '' || /^(?:the|list of|other|all)$/i.test(rest);
    return isBare ? { kind: 'list-of-ingredients', name, start, end } : { kind: 'component', name: rest, start, end };
  }
  const group = groupKind(words);
  if (group !== undefined) return { kind: 'group', name, start, end, ...group };
  return { kind: 'component', name, start, end };
}

/** What kind of group these words name, or undefined when they name a food: shared by "NAME: …" and "NAME (…)". */
export function groupKind(words: readonly Token[]): { readonly takesOne: boolean; readonly outOfOrder: boolean } | undefined {
  const last = words.at(-1)!.text;
  if (words.every(word => functionWords.has(word.text)) && words.some(word => functionHeads.has(word.text))) {
    return { takesOne: !words.some(word => functionHeads.has(word.text) && word.text.endsWith('s')), outOfOrder: false };
  }
  if (
    last === 'with' ||
    last === 'in' ||
    last === 'from' ||
    last === 'of' ||
    (last === 'by' && words.some(word => processHeads.has(word.text)))
  )
    return { takesOne: false, outOfOrder: true };
  if (words.some(word => nutrientGroupWords.has(word.text))) return { takesOne: false, outOfOrder: false };
  return undefined;
}
const nutrientGroupWords = new Set(['vitamins', 'minerals', 'mineral', 'cultures', 'electrolytes']);
