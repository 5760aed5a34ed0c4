import type { Leaf, RecipeTree } from './recipeTree.ts';

/** The kind of food decides what the law and the trade let additives be. */
export type FoodKind = 'meat' | 'processed cheese' | 'drink' | 'baked' | 'dry mix' | 'other';

/**
 * Told from the first ingredients and from how dry the food is: meat, poultry or fish among the first two; cheese or milk
 * with emulsifying salts; water or sweetened water with nothing solid; flour in something dry enough; little water at all.
 */
export function foodKind({ leaves }: RecipeTree, dryShare: number): FoodKind {
  const first = leaves.filter(({ taken, group }) => taken === 'reference' && group !== 'water').slice(0, 3);
  const has = (count: number, ...groups: readonly string[]): boolean => first.slice(0, count).some(({ group }) => groups.includes(group));
  if (has(1, 'meat', 'poultry', 'fish')) return 'meat';
  const isCheese = first.slice(0, 2).some(({ group, name }) => group === 'dairy' && /cheese/i.test(name));
  if (leaves.some(isPhosphate) && isCheese && !has(2, 'grain')) return 'processed cheese';
  if (leaves[0]?.group === 'water' && dryShare < 0.2 && !has(3, 'vegetable', 'legume', 'meat', 'poultry', 'fish', 'grain')) return 'drink';
  const isFloury = first.slice(0, 2).some(({ group, name }) => group === 'grain' || group === 'bread' || /flour|meal/i.test(name));
  if (isFloury && dryShare > 0.4)
    return leaves.some(({ group }) => group === 'water' || group === 'egg') || dryShare < 0.85 ? 'baked' : 'dry mix';
  return dryShare > 0.85 ? 'dry mix' : 'other';
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
  drink: { grams: 0.35, source: 'calcium-fortified drinks; own decision' },
  baked: { grams: 2.5, source: '21 CFR 137.180: acid and soda at most 4.5 parts in 100 of flour (share of flour: own decision)' },
  'dry mix': { grams: 4, source: 'own decision: no ceiling in law is known' },
  other: { grams: 0.35, source: 'twice what is typical, from memory; under the 1,500 mg/kg as phosphorus of Codex GSFA' },
};

/** The most that one additive or trifle may be in 100 g of the finished food. */
export function ceilingOf({ additive, taken, name, group }: Leaf, kind: FoodKind): Ceiling | undefined {
  const own = 'own decision: six times what is typical, from memory';
  if (additive === undefined) {
    if (group === 'spice') return { grams: kind === 'dry mix' ? 15 : 4, source: own };
    if (taken !== 'trifle' && taken !== 'salt') return undefined;
    return { grams: /cultur|enzyme|vitamin|colou?r|annatto|rennet/i.test(name) ? 1 : kind === 'dry mix' ? 6 : 3, source: own };
  }
  const { id } = additive;
  if (/lactate/.test(id) && kind === 'meat') return { grams: 4.8, source: '9 CFR 424.21(c): 4.8 % of the formulation' };
  if (id === 'phosphoric-acid') return { grams: 0.2, source: 'twice the 700 mg/kg as P2O5 of EU flavoured drinks (from memory)' };
  // A drink is clouded by more; what fortifies with calcium is held by the calcium on the panel.
  if (kind === 'drink' && isPhosphateOfSodiumOrPotassium(id))
    return { grams: 0.25, source: 'EU drinks of milk kind, 1,000 mg/kg as P2O5 (from memory), about' };
  if (/sorbate|benzoate|nitrite|nitrate|iodate|iodide|bromate|acesulfame/.test(id)) {
    return { grams: 0.3, source: '21 CFR 133.169, 182.3640, 184.1733: 0.1 to 0.3 %' };
  }
  if (/lecithin/.test(id)) return { grams: 1, source: 'own decision: twice what is typical, from memory' };
  if (id === 'salt' || isPhosphate({ additive } as Leaf)) return undefined;
  const typical = additive.typicalPercentFromMemory;
  return typical === null
    ? { grams: 3, source: own }
    : { grams: Math.max(0.05, typical * 6) * (kind === 'dry mix' ? 1.5 : 1), source: own };
}

function isPhosphateOfSodiumOrPotassium(id: string): boolean {
  return /phosphate/.test(id) && /sodium|potassium/.test(id);
}

/** What phosphates typically are in 100 g, all together, with a standard deviation; from memory, for the prior only. */
export const typicalPhosphates: Readonly<Record<FoodKind, { readonly grams: number; readonly deviation: number }>> = {
  meat: { grams: 0.35, deviation: 0.12 },
  'processed cheese': { grams: 2, deviation: 0.6 },
  drink: { grams: 0.05, deviation: 0.06 },
  baked: { grams: 0.7, deviation: 0.5 },
  'dry mix': { grams: 0.8, deviation: 0.7 },
  other: { grams: 0.1, deviation: 0.1 },
};
