import type { OpenModel } from '#core/optimize/linearModel.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { isPhosphate } from './foodKind.ts';
import type { AdditiveLimit } from './minerals.ts';
import type { RecipeModel, RowMeaning } from './recipeModel.ts';
import type { Leaf } from './recipeTree.ts';

/** How much phosphorus each phosphate additive can add at most, and which limit it runs into. */
export function additiveLimits(open: OpenModel, recipe: RecipeModel, leaves: readonly Leaf[]): readonly AdditiveLimit[] {
  const limits: AdditiveLimit[] = [];
  for (const [at, leaf] of leaves.entries()) {
    if (!isPhosphate(leaf) || limits.length >= mostTold) continue;
    const terms = recipe.most('phosphorusMg', one => one === at);
    const most = open.optimize({ sense: 'maximum', terms });
    if (most.kind !== 'optimal') continue;
    limits.push({ name: leaf.name, atMostMg: most.value, because: tightestRow(recipe, most.columns, at) });
  }
  return limits;
}

/** Every further one costs a solution of the model and tells little. */
const mostTold = 2;

/** The limit on the leaf that is reached, told in words: sodium before law, law before the threshold, and the order last. */
function tightestRow({ model, meanings }: RecipeModel, columns: Float64Array, leaf: number): string {
  const reached = model.rows.flatMap((row, index) => {
    const own = row.terms.find(({ at }) => at === leaf);
    if (own === undefined) return [];
    const sum = row.terms.reduce((total, { at, coefficient }) => total + coefficient * columns[at]!, 0);
    const size = row.terms.reduce((most, { at, coefficient }) => Math.max(most, Math.abs(coefficient * columns[at]!)), 1e-3);
    const end = own.coefficient > 0 ? row.hi : row.lo;
    return Math.abs(sum - end) < 1e-4 * size ? [meanings[index]!] : [];
  });
  for (const kind of ['printed', 'ceiling', 'threshold', 'order'] as const) {
    const meaning = reached.find(one => one.kind === kind);
    if (meaning !== undefined) return limitWords(meaning);
  }
  return 'the rest of the recipe leaves no more room';
}

function limitWords(meaning: RowMeaning): string {
  switch (meaning.kind) {
    case 'printed':
      return `the ${nutrients[meaning.nutrient].name} on the panel leaves no more room`;
    case 'ceiling':
      return `more is not expected in such a food (${meaning.source})`;
    case 'threshold':
      return `the statement says that it is ${meaning.percent}% or less`;
    case 'order':
      return `it stands after ${meaning.first} in the statement`;
    default:
      return 'the rest of the recipe leaves no more room';
  }
}
