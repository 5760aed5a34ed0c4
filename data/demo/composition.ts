import type { Nutrient } from '#core/quantity/nutrients.ts';
import ingredients from './ingredients.json' with { type: 'json' };
import { type DemoFood, partsOf, type Recipe } from './recipe.ts';

/** The nutrients that a recipe tells. Energy is computed from them; see `energyKcal`. */
export const tracedNutrients = [
  'fatG',
  'saturatedFatG',
  'transFatG',
  'cholesterolMg',
  'sodiumMg',
  'carbohydrateG',
  'fiberG',
  'totalSugarsG',
  'addedSugarsG',
  'proteinG',
  'vitaminDMcg',
  'calciumMg',
  'ironMg',
  'potassiumMg',
  'phosphorusMg',
] as const satisfies readonly Nutrient[];

export type TracedNutrient = (typeof tracedNutrients)[number];

/** What 100 g of the finished food truly holds. */
export type Composition = Readonly<Record<TracedNutrient | 'energyKcal' | 'waterG', number>>;

export function compositionPer100G(food: DemoFood): Composition {
  return 'boxes' in food ? mean(food.boxes.map(recipeComposition)) : recipeComposition(food);
}

/**
 * Adds up the ingredients and takes the cooking loss off as water, so that all else is left in fewer grams.
 * 2 g of salt in 100 g that roast down to 80 g: 984 mg of sodium per 100 g, from 787.
 *
 * @throws RangeError when more water leaves than the recipe holds.
 */
function recipeComposition(recipe: Recipe): Composition {
  const yieldG = recipe.yieldG ?? 100;
  const lines = recipe.items.flatMap(partsOf);
  const perFinished100G = (nutrient: TracedNutrient | 'waterG') =>
    lines.reduce((sum, { grams, of }) => sum + (grams * ingredients[of].per100G[nutrient]) / yieldG, 0);
  const waterG = perFinished100G('waterG') - ((100 - yieldG) * 100) / yieldG;
  if (waterG < 0) throw new RangeError(`${recipe.id}: more water leaves than goes in`);
  const told = Object.fromEntries(tracedNutrients.map(nutrient => [nutrient, perFinished100G(nutrient)])) as Record<TracedNutrient, number>;
  return { ...told, waterG, energyKcal: energyKcal(told) };
}

function mean(compositions: readonly Composition[]): Composition {
  const keys = [...tracedNutrients, 'energyKcal', 'waterG'] as const;
  const of = (key: keyof Composition) => compositions.reduce((sum, composition) => sum + composition[key], 0) / compositions.length;
  return Object.fromEntries(keys.map(key => [key, of(key)])) as Record<keyof Composition, number>;
}

/** General factors, 21 CFR 101.9(c)(1)(i)(B): 4 kcal a gram of protein and of total carbohydrate, 9 of fat, before rounding. */
function energyKcal({ proteinG, carbohydrateG, fatG }: Pick<Composition, 'proteinG' | 'carbohydrateG' | 'fatG'>): number {
  return 4 * proteinG + 4 * carbohydrateG + 9 * fatG;
}
