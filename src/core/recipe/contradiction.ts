import { nutrients } from '#core/quantity/nutrients.ts';
import type { Traced } from './content.ts';
import type { Conflict } from './minerals.ts';
import type { RecipeModel } from './recipeModel.ts';

/** Why a label says too little of its recipe: a line in grams is off by more than a quarter and more than a gram (own decision). Undefined when it is not so. */
export function contradiction(conflicts: readonly Conflict[], { meanings, excess }: RecipeModel): string | undefined {
  const off = conflicts.flatMap(({ meaning, by }) => {
    if (meaning.kind !== 'printed' || nutrients[meaning.nutrient].unit !== 'g') return [];
    const { cost } = excess.get(meanings.indexOf(meaning))!;
    return by > 1 && by * cost > 0.25 ? [sideWords(meaning.nutrient, meaning.side)] : [];
  });
  return off.length === 0 ? undefined : `the panel and the statement contradict each other: what is named brings ${off.join(' and ')}`;
}

function sideWords(nutrient: Traced, side: 'most' | 'least'): string {
  return `too ${side === 'most' ? 'much' : 'little'} ${nutrients[nutrient].name}`;
}
