import type { Leaf, RecipeTree } from './recipeTree.ts';

/** The kind of food decides what the law and the trade let additives be. */
export type FoodKind = 'meat' | 'processed cheese' | 'drink' | 'baked' | 'dry mix' | 'other';

/**
 * Told from the first ingredients: meat, poultry or fish among them; cheese or milk with emulsifying salts; water or
 * sweetened water with nothing solid; flour; no water at all.
 */
export function foodKind({ leaves }: RecipeTree, isMilliliters: boolean): FoodKind {
  const first = leaves.filter(({ taken }) => taken === 'reference').slice(0, 3);
  const has = (...groups: readonly string[]): boolean => first.some(({ group }) => groups.includes(group));
  const phosphates = leaves.filter(isPhosphate);
  if (has('meat', 'poultry', 'fish')) return 'meat';
  if (phosphates.length > 0 && first.some(({ group, name }) => group === 'dairy' && /cheese/i.test(name))) return 'processed cheese';
  const solid = first.some(({ group }) => !['water', 'sugar', 'fruit', 'beverage'].includes(group));
  if (leaves[0]?.group === 'water' && (isMilliliters || !solid)) return 'drink';
  if (has('grain') || first.some(({ name }) => /flour|meal/i.test(name))) return 'baked';
  return leaves.some(({ group }) => group === 'water' || group === 'dairy' || group === 'vegetable') ? 'other' : 'dry mix';
}

export function isPhosphate({ additive }: Leaf): boolean {
  return additive?.phosphate === 'inorganic' || additive?.phosphate === 'possible';
}

export interface Ceiling {
  readonly grams: number;
  readonly source: string;
}

/** The most that all phosphate additives together may be in 100 g of the finished food. */
export const phosphateCeilings: Readonly<Record<FoodKind, Ceiling>> = {
  meat: { grams: 0.5, source: '9 CFR 424.21(c): 0.5 % of the product' },
  'processed cheese': { grams: 3, source: '21 CFR 133.169(c): emulsifying salts at most 3 %' },
  drink: { grams: 0.3, source: 'three times the 700 mg/kg as P2O5 of EU flavoured drinks (from memory)' },
  baked: {
    grams: 3,
    source: '21 CFR 137.180: acid and soda at most 4.5 parts in 100 of flour; about two thirds of the food is flour (own decision)',
  },
  'dry mix': { grams: 5, source: 'own decision: no ceiling in law is known' },
  other: { grams: 1, source: 'Codex GSFA group limits, about 0.2 % as phosphorus (own decision)' },
};

/** The most that one potassium or sodium salt may be in 100 g. */
export function saltCeiling({ additive }: Leaf): Ceiling | undefined {
  if (additive === undefined) return undefined;
  if (/lactate/.test(additive.id)) return { grams: 4.8, source: '9 CFR 424.21(c): 4.8 % of the formulation' };
  if (/sorbate|benzoate|nitrite|nitrate|iodate|iodide|bromate|acesulfame/.test(additive.id)) {
    return { grams: 0.3, source: '21 CFR 133.169, 182.3640, 184.1733: 0.1 to 0.3 %' };
  }
  if (additive.potassium === 'none' || additive.potassium === 'natural') return undefined;
  return { grams: 3, source: 'own decision: no ceiling in law is known' };
}

/** What phosphates typically are in 100 g, all together; from memory, for the prior only. */
export const typicalPhosphatesG: Readonly<Record<FoodKind, number>> = {
  meat: 0.35,
  'processed cheese': 2,
  drink: 0.06,
  baked: 0.8,
  'dry mix': 1,
  other: 0.25,
};
