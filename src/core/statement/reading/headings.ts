import type { Token } from '#core/statement/text/token.ts';
import { functionHeads, functionWords, nutrientGroupWords, treatments } from '#core/statement/text/vocabulary.ts';
import type { Item } from './item.ts';
import { nameOf } from './nameOf.ts';

/** What kind of group a heading opens. */
export interface GroupKind {
  /** A singular function word heads one ingredient ("antioxidant: ascorbic acid"), a plural one the rest of its sentence. */
  readonly takesOne: boolean;
  /** It tells a treatment, not a share: its place in the list says nothing about its weight. */
  readonly outOfOrder: boolean;
  /** "if strawberry: red 40": the group may be absent. */
  readonly isConditional: boolean;
}

/** What the words before a colon are. */
export interface Heading {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  /** "INGREDIENTS:" without an owner: a title. */
  readonly isTitle: boolean;
  /** "ALLERGENS:", "ALLERGY INFORMATION:" */
  readonly isOfAllergens: boolean;
  /** The kind of group it opens; undefined for a component. */
  readonly group: GroupKind | undefined;
}

const longestHeading = 9;
const bareTitle = /^(?:the|list of|other|all|product)?$/i;

/** Reads the collected words as a heading; undefined when they are too many to be one, and the colon is then a separator. */
export function headingAt(text: string, item: Item): Heading | undefined {
  const words = item.words.filter(word => word.kind === 'word' || word.kind === 'number');
  const last = words.at(-1);
  if (last === undefined || words.length > longestHeading) return undefined;
  const start = words[0]!.start;
  const end = Math.max(item.brackets.at(-1)?.end ?? 0, last.end);
  const isOfAllergens = words.some(word => word.text === 'allergens' || word.text === 'allergen' || word.text === 'allergy');
  const owner = ownerOf(item.words.slice(0, item.words.lastIndexOf(last) + 1));
  if (owner === undefined) return { name: nameOf(text, item.words), start, end, isTitle: false, isOfAllergens, group: groupKind(words) };
  const name = nameOf(text, owner);
  const isTitle = bareTitle.test(name);
  return { name: isTitle ? nameOf(text, item.words) : name, start, end, isTitle, isOfAllergens, group: undefined };
}

/** "SAUCE" of "SAUCE INGREDIENTS", "SAUCE ALSO CONTAINS"; undefined when the heading has no such end. */
function ownerOf(words: readonly Token[]): readonly Token[] | undefined {
  const last = words.at(-1)!.text;
  const before = words.at(-2)?.text;
  if (last === 'ingredients' || last === 'ingredient') return words.slice(0, -1);
  if (last === 'statement' && before === 'ingredient') return words.slice(0, -2);
  if (last === 'contains') return words.slice(0, before === 'also' ? -2 : -1);
  return undefined;
}

/** What kind of group these words name, or undefined when they name a food: shared by "NAME: …" and "NAME (…)". */
export function groupKind(words: readonly Token[]): GroupKind | undefined {
  if (words.every(word => functionWords.has(word.text))) {
    const heads = words.filter(word => functionHeads.has(word.text));
    if (heads.length > 0) return { takesOne: !heads.some(head => head.text.endsWith('s')), outOfOrder: false, isConditional: false };
  }
  if (words.length > 1 && words[0]!.text === 'if') return { takesOne: false, outOfOrder: true, isConditional: true };
  const last = words.at(-1)!.text;
  const isTreatment =
    last === 'with' ||
    last === 'in' ||
    last === 'from' ||
    last === 'of' ||
    (last === 'by' && words.some(word => treatments.has(word.text)));
  if (isTreatment) return { takesOne: false, outOfOrder: true, isConditional: false };
  const isNutrients = words.some(word => nutrientGroupWords.has(word.text));
  return isNutrients ? { takesOne: false, outOfOrder: false, isConditional: false } : undefined;
}
