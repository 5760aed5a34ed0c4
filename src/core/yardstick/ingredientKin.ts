import { matchFood } from '#core/reference/matchFood.ts';
import { nameWords } from '#core/reference/nameWords.ts';
import type { Ingredient, Remark, Statement } from '#core/statement/statement.ts';
import table from '#data/ingredient-kin.json' with { type: 'json' };

/** Whether a statement names an ingredient or its kin. `words` is what was found, as printed. */
export type KinPresence =
  | { readonly kind: 'named'; readonly words: string }
  /** Only allowed ("and/or", "may contain", an allergen remark), or hidden by a collective name. */
  | { readonly kind: 'possible'; readonly words: string }
  | { readonly kind: 'none' }
  /** The program does not know what else the word stands for, so that silence proves nothing. */
  | { readonly kind: 'unknown' };

interface Kin {
  readonly title: string;
  readonly names: RegExp;
  /** Names that only look like it, masked before looking: "coconut milk" is no milk. */
  readonly notNames?: RegExp;
  readonly mayHide: ReadonlySet<string>;
  /** Words of a name that may hide it, unless the name says "free": oats carry gluten, gluten-free oats do not. */
  readonly hidingWords?: RegExp;
  readonly isUnknown?: true;
}

const kinByKey = new Map<string, Kin>(
  table.rows.map(row => [
    row.kin,
    {
      title: row.title,
      names: onWordBoundaries(row.names),
      ...(row.notNames.length > 0 ? { notNames: onWordBoundaries(row.notNames) } : {}),
      ...(row.mayHideWords.length > 0 ? { hidingWords: onWordBoundaries(row.mayHideWords) } : {}),
      mayHide: new Set(row.mayHide.flatMap(name => [name, `${name}s`])),
    },
  ]),
);

/**
 * An ingredient that has no row in the table is looked for by its own name alone. Whether it is one is asked of the composition table:
 * "kiwi" is an ingredient, "preservatives" may be many.
 */
function kinOf(key: string): Kin {
  const row = kinByKey.get(key);
  if (row !== undefined) return row;
  const singular = nameWords(key).join(' ');
  const names = onWordBoundaries([key, ...(singular === '' ? [] : [singular])]);
  const isKnown = (matchFood(key)?.confidence ?? 0) >= surelyAFood;
  return { title: key, names, mayHide: new Set(), ...(isKnown ? {} : { isUnknown: true as const }) };
}

/** A match below it left words out, or guessed (REF-5). */
const surelyAFood = 0.9;

const keysByAlias = new Map<string, readonly string[]>();
/** What a reader of one language would not read: Spanish words, and names that Spanish has a word for. */
const spanishAliases = new Set<string>();
const spanishNames = new Map<string, string>();
for (const { kin, title, aliases, aliasesEs, namesEs } of table.rows) {
  for (const alias of aliasesEs) spanishAliases.add(nameWords(alias).join(' '));
  for (const [name, spanish] of Object.entries(namesEs)) spanishNames.set(nameWords(name).join(' '), spanish);
  for (const alias of [kin, title, ...aliases, ...aliasesEs]) {
    const words = nameWords(alias).join(' ');
    keysByAlias.set(words, [...new Set([...(keysByAlias.get(words) ?? []), kin])]);
  }
}

/** Whether the program knows what a key stands for, so that a label's silence about it means something. */
export function isKnownKin(key: string): boolean {
  return kinOf(key).isUnknown !== true;
}

/** What people write around the name of what they avoid, in English and in Spanish. */
const around =
  /(?<!\p{L})(?:severe|mild|food|allerg(?:y|ies|ic|en)|intoleran(?:t|ce)|sensitiv(?:e|ity)|disease|avoids?|cannot have|can not have|without|no|to|any|all|products?|al[eé]rgi(?:a|as|co|ca)|intolerancia|intolerante|sensible|sensibilidad|severa|grave|leve|evita|no puede comer|no come|sin|productos? de|a|al|el|la|los|las|todo|toda|todos|todas)(?!\p{L})/giu;

/** What stands between the parts of a list. */
const between = /[,;/+&\n]|(?<!\p{L})(?:and|or|y|o)(?!\p{L})/iu;

/**
 * The keys that a client's own words stand for: "Tree nuts (severe)", "allergic to shrimp, eggs". Each part of a list by itself; what is
 * not known stays as it was written. `kinKeys('Dairy and soya')` is milk, soy; `kinKeys('seafood')` fish, shellfish.
 */
export function kinKeys(words: string): readonly string[] {
  const keys = partsOf(words).flatMap(part => {
    const known = aliasIn(part);
    if (known !== undefined) return keysByAlias.get(known)!;
    const own = part.replace(around, ' ').replace(/\s+/g, ' ').trim().toLowerCase();
    return own === '' ? [] : [own];
  });
  // Nothing but words around a name: it is kept, and will be told as not known.
  return keys.length > 0 ? [...new Set(keys)] : [words.trim().toLowerCase()];
}

function partsOf(words: string): readonly string[] {
  return words.replace(/\([^)]*\)/g, ' ').split(between);
}

/** The known name in a part of a list: "celiac disease" is known whole; "no pork" is pork, "alergia al maní" peanuts. */
function aliasIn(part: string): string | undefined {
  return [part, part.replace(around, ' ')].map(one => nameWords(one).join(' ')).find(one => keysByAlias.has(one));
}

export function kinTitle(key: string): string {
  return kinOf(key).title;
}

const titlesEs = new Map(table.rows.map(({ kin, titleEs }) => [kin, titleEs]));

/** Whether every part of what a client avoids is a name that the table has in both languages; any other word stays as it was typed. */
export function isKnownName(words: string): boolean {
  const parts = partsOf(words).filter(part => part.trim() !== '');
  return parts.length > 0 && parts.every(part => knownAlias(part) !== undefined);
}

function knownAlias(part: string): string | undefined {
  return aliasIn(part) ?? aliasIn(part.replaceAll('-', ' '));
}

/**
 * What a client avoids as a page says it: as it was written in the page's own language, by the kin's title where it was written in the
 * other one. "Milk allergy" is "leche" in Spanish; a word that the table does not know stays.
 */
export function avoidedName(words: string, language: 'en' | 'es'): string {
  const parts = partsOf(words).filter(part => part.trim() !== '');
  const known = parts.map(knownAlias);
  if (!isKnownName(words)) return words;
  const isOwn = known.every(one => (spanishAliases.has(one!) ? language === 'es' : language === 'en'));
  if (isOwn) return words;
  const titles = known.flatMap(one => {
    const spanish = language === 'es' ? spanishNames.get(one!) : undefined;
    return spanish === undefined ? keysByAlias.get(one!)!.map(key => (language === 'es' ? titlesEs.get(key)! : kinTitle(key))) : [spanish];
  });
  return [...new Set(titles)].join(', ');
}

/**
 * Looks for an ingredient or its kin in the tree, in its notes ("from wheat") and, for statements that the parser could
 * not take apart, in the text. `presence of garlic in "RICE, SPICES"` is possible: "SPICES" may hide it.
 */
export function kinFinder(key: string): (statement: Statement) => KinPresence {
  const kin = kinOf(key);
  return statement => {
    const found: Found = {};
    for (const ingredient of statement.ingredients) searchIngredient(ingredient, kin, true, found);
    for (const remark of statement.remarks) searchRemark(remark, kin, found);
    if (!found.named && !found.possible) searchText(statement, kin, found);
    if (found.named) return { kind: 'named', words: found.named };
    if (found.possible) return { kind: 'possible', words: found.possible };
    return { kind: kin.isUnknown ? 'unknown' : 'none' };
  };
}

interface Found {
  named?: string;
  possible?: string;
}

function searchIngredient(ingredient: Ingredient, kin: Kin, certainAbove: boolean, found: Found): void {
  const certain = certainAbove && ingredient.presence === 'certain';
  const isSure = certain && !isLeftOpen(ingredient, kin);
  for (const words of [ingredient.name, ...ingredient.notes]) {
    if (mentions(words, kin)) found[isSure ? 'named' : 'possible'] ??= words;
  }
  if (ingredient.parts.length === 0 && mayHide(ingredient.name, kin)) found.possible ??= ingredient.name;
  for (const part of ingredient.parts) searchIngredient(part, kin, certain, found);
}

/** The name "peanuts and/or almonds" stands above its alternatives, one of which may be all there is. Butter and/or cream are milk either way. */
function isLeftOpen({ start, parts }: Ingredient, kin: Kin): boolean {
  return parts[0]?.presence === 'alternative' && parts[0].start === start && !parts.every(part => mentions(part.name, kin));
}

function mayHide(name: string, kin: Kin): boolean {
  if (kin.mayHide.has(name.toLowerCase())) return true;
  return kin.hidingWords !== undefined && name.search(kin.hidingWords) >= 0 && !/\bfree\b/i.test(name);
}

/** "Contains: wheat" names it; "may contain" and a shared facility only allow it; claims and footnotes say nothing of it. */
function searchRemark(remark: Remark, kin: Kin, found: Found): void {
  if (remark.kind === 'claim' || remark.kind === 'footnote' || !mentions(remark.text, kin)) return;
  found[remark.kind === 'allergens' ? 'named' : 'possible'] ??= remark.text;
}

function searchText(statement: Statement, kin: Kin, found: Found): void {
  if (!mentions(statement.text, kin)) return;
  const characters = Array.from(statement.text);
  for (const { start, end } of statement.remarks) characters.fill(' ', start, end);
  const words = mentions(characters.join(''), kin);
  if (words) found.named ??= words;
}

/** The word found, or undefined. A negated one ("no garlic", "wheat-free") does not count. */
function mentions(text: string, kin: Kin): string | undefined {
  if (text.search(kin.names) < 0) return undefined;
  const masked = kin.notNames ? text.replace(kin.notNames, ' ') : text;
  for (const match of masked.matchAll(kin.names)) {
    const before = masked.slice(0, match.index);
    const after = masked.slice(match.index + match[0].length);
    if (!/\b(no|non|not|without|free of|free from|zero)[\s-]+(added\s+)?$/i.test(before) && !/^[\s-]free\b/i.test(after)) return match[0];
  }
  return undefined;
}

function onWordBoundaries(names: readonly string[]): RegExp {
  const escaped = names.map(name =>
    name
      .replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
      .replace(/\s+/g, '\\s+')
      .replace(/y$/, '(?:y|ie)'),
  );
  // Letters of Spanish are letters too: "maní" ends where it ends.
  return new RegExp(`(?<![\\p{L}\\p{N}_])(?:${escaped.join('|')})(?:es|s)?(?![\\p{L}\\p{N}_])`, 'giu');
}
