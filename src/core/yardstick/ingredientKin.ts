import type { Ingredient, Remark, Statement } from '#core/statement/statement.ts';
import table from '#data/ingredient-kin.json' with { type: 'json' };

/** Whether a statement names an ingredient or its kin. `words` is what was found, as printed. */
export type KinPresence =
  | { readonly kind: 'named'; readonly words: string }
  /** Only allowed ("and/or", "may contain", an allergen remark), or hidden by a collective name. */
  | { readonly kind: 'possible'; readonly words: string }
  | { readonly kind: 'none' };

interface Kin {
  readonly title: string;
  readonly names: RegExp;
  /** Names that only look like it, masked before looking: "coconut milk" is no milk. */
  readonly notNames?: RegExp;
  readonly mayHide: ReadonlySet<string>;
}

const kinByKey = new Map<string, Kin>(
  table.rows.map(row => [
    row.kin,
    {
      title: row.title,
      names: onWordBoundaries(row.names),
      ...(row.notNames.length > 0 ? { notNames: onWordBoundaries(row.notNames) } : {}),
      mayHide: new Set(row.mayHide.flatMap(name => [name, `${name}s`])),
    },
  ]),
);

/** An ingredient that has no row in the table is looked for by its own name alone. */
function kinOf(key: string): Kin {
  return kinByKey.get(key) ?? { title: key, names: onWordBoundaries([key]), mayHide: new Set() };
}

export function kinTitle(key: string): string {
  return kinOf(key).title;
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
    return found.possible ? { kind: 'possible', words: found.possible } : { kind: 'none' };
  };
}

interface Found {
  named?: string;
  possible?: string;
}

function searchIngredient(ingredient: Ingredient, kin: Kin, certainAbove: boolean, found: Found): void {
  const certain = certainAbove && ingredient.presence === 'certain';
  for (const words of [ingredient.name, ...ingredient.notes]) {
    if (mentions(words, kin)) found[certain ? 'named' : 'possible'] ??= words;
  }
  if (ingredient.parts.length === 0 && kin.mayHide.has(ingredient.name.toLowerCase())) found.possible ??= ingredient.name;
  for (const part of ingredient.parts) searchIngredient(part, kin, certain, found);
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
  const escaped = names.map(name => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+'));
  return new RegExp(`\\b(?:${escaped.join('|')})(?:es|s)?\\b`, 'gi');
}
