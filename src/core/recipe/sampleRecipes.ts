import type { FoodKind } from './foodKind.ts';
import type { PrintedServingFacts } from './printedServing.ts';
import { randomNumbers } from './randomNumbers.ts';
import type { RecipeModel } from './recipeModel.ts';
import type { RecipeTree } from './recipeTree.ts';
import { exchange, gaussianDirections } from './sample/directions.ts';
import { drawMinerals, emptySample, type RecipeSample } from './sample/drawMinerals.ts';
import { hardRows } from './sample/hardRows.ts';
import { lineStep } from './sample/lineStep.ts';
import { observations } from './sample/observations.ts';
import { decays, typicalUse } from './sample/typicalUse.ts';

const burnIn = 500;
const kept = 500;
const stepsBetween = 4;

/**
 * Draws recipes by hit-and-run over the hard rows of the model (order, thresholds, ceilings, mass), each line segment
 * drawn from its exact distribution: a normal, cut at the ends. The prior is flat over shares in order; additives and
 * trifles decay with their typical level, and water lost with its own. The printed figures weigh in as normals as wide as
 * their rounding and the spread of the reference figures together. Same seed, same draws.
 */
export function sampleRecipes(
  tree: RecipeTree,
  kind: FoodKind,
  facts: PrintedServingFacts,
  recipe: RecipeModel,
  start: Float64Array,
  seed: number,
): RecipeSample {
  const { leaves } = tree;
  const n = leaves.length;
  const size = n + 1;
  const random = randomNumbers(seed);
  const serving = (facts.servingG.lo + facts.servingG.hi) / 2;
  const x = Float64Array.from(start.subarray(0, size));
  const hard = hardRows(recipe, size, x);
  const observed = [...observations(tree, facts, x, serving), ...typicalUse(tree, kind, serving)];
  const decay = decays(tree, facts, serving);
  const wander = gaussianDirections(observed, x, serving, size);
  const direction = new Float64Array(size);
  const move = lineStep(x, hard, observed, decay, random);

  const step = (): void => {
    direction.fill(0);
    if (random.uniform() < 0.5) exchange(direction, n, random.uniform);
    else wander(direction, random.normal);
    move(direction);
  };
  for (let i = 0; i < burnIn; i++) step();
  const sample = emptySample(n, kept);
  const draw = drawMinerals(tree, facts, random.normal);
  for (let at = 0; at < kept; at++) {
    for (let i = 0; i < stepsBetween; i++) step();
    draw(x, sample, at);
  }
  return sample;
}
