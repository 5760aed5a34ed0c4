import { findAdditives } from '#core/additive/findAdditives.ts';
import type { PrintedPanel, ReadLabel } from '#core/label/label.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { LargerReference } from '#core/reference/largerReference.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { type RecipeTree, recipeTree } from './recipeTree.ts';

/** A US label of a serving in grams, as read. */
export function labelOf(statement: string | undefined, grams: number, panel: PrintedPanel): ReadLabel {
  return readLabel({
    market: 'us',
    serving: { household: '1 serving', grams },
    basis: 'per-serving',
    state: 'as-packaged',
    front: [],
    panel,
    otherColumns: [],
    ...(statement === undefined ? {} : { statement }),
  });
}

/** The unknowns of a statement. */
export function treeOf(text: string, larger?: LargerReference): RecipeTree {
  const { value } = parseStatement(text);
  return recipeTree(value.ingredients, findAdditives(value), larger);
}
