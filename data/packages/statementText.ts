import type { PrintStyle } from './maker.ts';
import { type Food, gramsOf, isRecipe, type Line, type Recipe, type RecipeItem } from './recipe.ts';

/**
 * Writes the ingredient statement as 21 CFR 101.4 has it: descending by the weight that goes in, the small ones after the
 * clause in the order of the recipe, groups and compound ingredients with their parts, the allergen line last.
 */
export function statementText(food: Food, style: PrintStyle): string {
  const lists = isRecipe(food)
    ? style.opening + listText(food, style)
    : food.boxes.map(box => `${inLetters(`${box.name} ingredients`, style.letters)}: ${listText(box, style)}`).join(' ');
  const allergens =
    food.allergens === undefined ? '' : ` ${style.allergenWords} ${inLetters(food.allergens, style.letters)}${style.ending}`;
  return lists + allergens;
}

function listText(recipe: Recipe, style: PrintStyle): string {
  const { ordered, afterClause } = statementOrder(recipe, style);
  const list = ordered.map(itemWords).join(', ');
  const tail = afterClause.length > 0 ? `, ${style.clause?.words} ${afterClause.map(itemWords).join(', ')}` : '';
  return inLetters(withInnerBrackets(list + tail, style.innerBrackets), style.letters) + style.ending;
}

/** Which items go before the clause, in order, and which after it. An item at or under the limit, before and after cooking, may follow it. */
export function statementOrder(
  { items, yieldG }: Pick<Recipe, 'items' | 'yieldG'>,
  { clause }: Pick<PrintStyle, 'clause'>,
): { readonly ordered: readonly RecipeItem[]; readonly afterClause: readonly RecipeItem[] } {
  const isSmall = (item: RecipeItem) => clause !== undefined && (gramsOf(item) / Math.min(yieldG, 100)) * 100 <= clause.percent;
  const descending = items.filter(item => !isSmall(item)).sort((a, b) => gramsOf(b) - gramsOf(a));
  return { ordered: descending, afterClause: items.filter(isSmall) };
}

function itemWords(item: RecipeItem): string {
  if (!('parts' in item)) return lineWords(item);
  const parts = [...item.parts]
    .sort((a, b) => b.grams - a.grams)
    .map(lineWords)
    .join(', ');
  return item.colon ? `${item.name}: ${parts}` : `${item.name} (${parts})`;
}

function lineWords({ words, note }: Line): string {
  return note === undefined ? words : `${words} (${note})`;
}

/** Turns brackets inside brackets into square ones where the maker prints them so. */
function withInnerBrackets(text: string, inner: PrintStyle['innerBrackets']): string {
  if (inner === 'round') return text;
  let depth = 0;
  return text.replace(/[()]/g, bracket => {
    if (bracket === '(') depth += 1;
    const inside = depth > 1;
    if (bracket === ')') depth -= 1;
    if (!inside) return bracket;
    return bracket === '(' ? '[' : ']';
  });
}

function inLetters(text: string, letters: PrintStyle['letters']): string {
  switch (letters) {
    case 'upper':
      return text.toUpperCase();
    case 'lower':
      return text;
    case 'sentence':
      return text.charAt(0).toUpperCase() + text.slice(1);
    case 'title':
      return text.replace(/(?<![\w%'])(?!(?:and|or|of|to|from|with|in|less|each|the|following|than|by)\b)[a-z]/g, first =>
        first.toUpperCase(),
      );
  }
}
