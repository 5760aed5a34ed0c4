import { type Traced, traced } from '../content.ts';
import type { PrintedServingFacts } from '../printedServing.ts';
import type { RecipeTree } from '../recipeTree.ts';
import { figureDeviation } from './figureDeviation.ts';

/** A sum over grams of each leaf and of water lost that is known as a normal. */
export interface Observation {
  readonly coefficients: Float64Array;
  readonly mean: number;
  readonly variance: number;
}

/** Each printed figure as a normal over the most likely contents. */
export function observations(
  { leaves }: RecipeTree,
  { printed }: PrintedServingFacts,
  x: Float64Array,
  serving: number,
): readonly Observation[] {
  const size = leaves.length + 1;
  return traced.flatMap(nutrient => {
    const range = printed[nutrient];
    if (range === undefined || !Number.isFinite(range.hi)) return [];
    const coefficients = new Float64Array(size);
    let variance = (range.hi - range.lo) ** 2 / 12 + (serving * floorOf[nutrient]) ** 2;
    for (const [at, { content, taken }] of leaves.entries()) {
      const figure = content.per1G[nutrient];
      coefficients[at] = figure.mid;
      const sd = taken === 'unknown' || taken === 'trifle' ? (figure.hi - figure.lo) / 8 : figureDeviation(figure);
      variance += (sd * (x[at]! + 0.002 * serving)) ** 2;
    }
    return [{ coefficients, mean: (range.lo + range.hi) / 2, variance }];
  });
}

/** Least deviation of a balance, per gram of serving: what neither table nor label knows (ash, drip, enrichment). */
const floorOf: Readonly<Record<Traced, number>> = {
  proteinG: 0.002,
  fatG: 0.002,
  saturatedFatG: 0.003,
  cholesterolMg: 0.02,
  sodiumMg: 0.1,
  carbohydrateG: 0.006,
  fiberG: 0.004,
  totalSugarsG: 0.008,
  calciumMg: 0.08,
  ironMg: 0.006,
  phosphorusMg: 0.05,
  potassiumMg: 0.1,
};
