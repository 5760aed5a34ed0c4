import type { Ingredient, Statement } from '#core/statement/statement.ts';

/**
 * A tree on one line, for tests and for reading: parts in braces, "?" optional, "|" alternative, "≤2" a threshold,
 * "=83" a printed percentage, "~" a note, "#" a group, "@" a component.
 */
export function outline(statement: Pick<Statement, 'ingredients'>): string {
  return statement.ingredients.map(outlineOf).join(', ');
}

function outlineOf(ingredient: Ingredient): string {
  const kind = ingredient.kind === 'group' ? '#' : ingredient.kind === 'component' ? '@' : '';
  const presence = ingredient.presence === 'may-contain' ? '?' : ingredient.presence === 'alternative' ? '|' : '';
  const percent = ingredient.declaredPercent === undefined ? '' : `=${ingredient.declaredPercent}`;
  const limit = ingredient.atMostPercent === undefined ? '' : `≤${ingredient.atMostPercent}`;
  const notes = ingredient.notes.map(note => `~${note}`).join('');
  const parts = ingredient.parts.length === 0 ? '' : `{${ingredient.parts.map(outlineOf).join(', ')}}`;
  return `${kind}${presence}${ingredient.organic ? 'organic ' : ''}${ingredient.name}${percent}${limit}${notes}${parts}`;
}
