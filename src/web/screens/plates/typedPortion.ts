import type { Portion } from '#core/plate/plate.ts';

/** A portion as it is typed: a number, and what it is counted in. */
export interface TypedPortion {
  readonly amount: string;
  readonly unit: string;
}

export const portionUnits = ['servings', 'grams', 'milliliters', 'slice', 'cup', 'tablespoon', 'teaspoon', 'piece', 'cracker'];

export function portionJson({ amount, unit }: TypedPortion): Portion {
  const count = Number(amount);
  if (unit === 'servings') return { servings: count };
  if (unit === 'grams') return { grams: count };
  return unit === 'milliliters' ? { milliliters: count } : { measure: unit, count };
}

export function typedPortion(portion: Portion = { servings: 1 }): TypedPortion {
  if ('servings' in portion) return { amount: String(portion.servings), unit: 'servings' };
  if ('grams' in portion) return { amount: String(portion.grams), unit: 'grams' };
  if ('milliliters' in portion) return { amount: String(portion.milliliters), unit: 'milliliters' };
  return { amount: String(portion.count), unit: portion.measure };
}
