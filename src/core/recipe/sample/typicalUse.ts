import { type FoodKind, isPhosphate, typicalPhosphates } from '../foodKind.ts';
import type { PrintedServingFacts } from '../printedServing.ts';
import type { RecipeTree } from '../recipeTree.ts';
import { typicalWaterLost } from '../waterLost.ts';
import type { Observation } from './observations.ts';

/** What additives typically are, as normals: all phosphates together by kind of food, every other salt by its own level. */
export function typicalUse({ leaves }: RecipeTree, kind: FoodKind, serving: number): readonly Observation[] {
  const size = leaves.length + 1;
  const prior = (at: readonly number[], grams: number, sd: number): Observation => {
    const coefficients = new Float64Array(size);
    for (const leaf of at) coefficients[leaf] = 1;
    return { coefficients, mean: (grams / 100) * serving, variance: ((sd / 100) * serving) ** 2 };
  };
  const phosphates = leaves.flatMap((leaf, at) => (isPhosphate(leaf) ? [at] : []));
  const { grams, deviation: sd } = typicalPhosphates[kind];
  return [
    ...(phosphates.length === 0 ? [] : [prior(phosphates, grams, sd)]),
    ...leaves.flatMap((leaf, at) =>
      leaf.additive === undefined || leaf.additive.id === 'salt' || leaf.typicalG === undefined || isPhosphate(leaf)
        ? []
        : [prior([at], leaf.typicalG, 0.7 * leaf.typicalG)],
    ),
  ];
}

/** Log-linear part of the prior: how fast the density falls with grams. */
export function decays({ leaves }: RecipeTree, facts: PrintedServingFacts, serving: number): Float64Array {
  const decay = new Float64Array(leaves.length + 1);
  for (const [at, leaf] of leaves.entries()) {
    if (leaf.typicalG !== undefined && leaf.additive === undefined) decay[at] = 1 / ((leaf.typicalG / 100) * serving);
  }
  decay[leaves.length] = 1 / typicalWaterLost(facts);
  return decay;
}
