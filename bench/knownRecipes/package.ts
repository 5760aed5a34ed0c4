import { usDeclaredFigure } from '#core/label/figure/declaredFigure.ts';
import type { PrintedPanel } from '#core/label/label.ts';
import type { Composition } from './composition.ts';
import { type Group, gramsOf, type Line, partsOf, type Recipe } from './recipe.ts';

/** The lines of the panel. Potassium and phosphorus are what the model is asked for: they are not printed. */
const lines = [
  'energyKcal',
  'fatG',
  'saturatedFatG',
  'cholesterolMg',
  'sodiumMg',
  'carbohydrateG',
  'fiberG',
  'totalSugarsG',
  'proteinG',
  'calciumMg',
  'ironMg',
] as const;

/** What US law prints of a serving (21 CFR 101.9(c)). A line whose amount is not known is left off. */
export function printedPanel(per100G: Composition, servingG: number): PrintedPanel {
  return Object.fromEntries(
    lines.flatMap(line => {
      const amount = per100G[line];
      return amount === undefined ? [] : [[line, usDeclaredFigure(line, (amount * servingG) / 100)]];
    }),
  );
}

export interface StatementStyle {
  /** Whether the small ones stand after "contains 2% or less of:". */
  readonly clause: boolean;
  readonly capitals: boolean;
}

/** Ingredients descending by the weight that goes in (21 CFR 101.4(a)(1)), or at most 2 % after the clause, in the recipe's order (101.4(a)(2)). */
export function statementText(recipe: Recipe, style: StatementStyle): string {
  const { ordered, afterClause } = statementOrder(recipe, style);
  const list = ordered.map(itemWords).join(', ');
  const tail = afterClause.length === 0 ? '' : `, contains 2% or less of: ${afterClause.map(itemWords).join(', ')}`;
  const text = withInnerBrackets(list + tail);
  return `${style.capitals ? text.toUpperCase() : text.charAt(0).toUpperCase() + text.slice(1)}.`;
}

/** Which items stand before the clause, in order, and which after it: those of at most 2 % before and after cooking. */
export function statementOrder(
  recipe: Recipe,
  { clause }: Pick<StatementStyle, 'clause'>,
): { readonly ordered: readonly (Line | Group)[]; readonly afterClause: readonly (Line | Group)[] } {
  const isSmall = (item: Line | Group) => clause && gramsOf(item) <= (2 * Math.min(recipe.yieldG, 100)) / 100;
  return {
    ordered: recipe.items.filter(item => !isSmall(item)).sort((a, b) => gramsOf(b) - gramsOf(a)),
    afterClause: recipe.items.filter(isSmall),
  };
}

function itemWords(item: Line | Group): string {
  if (!('parts' in item)) return item.words;
  const parts = [...partsOf(item)].sort((a, b) => b.grams - a.grams).map(({ words }) => words);
  return `${item.heading} (${parts.join(', ')})`;
}

function withInnerBrackets(text: string): string {
  let depth = 0;
  return text.replace(/[()]/g, bracket => {
    if (bracket === '(') depth += 1;
    const inside = depth > 1;
    if (bracket === ')') depth -= 1;
    return inside ? { '(': '[', ')': ']' }[bracket as '(' | ')'] : bracket;
  });
}
