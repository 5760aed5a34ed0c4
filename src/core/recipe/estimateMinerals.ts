import type { ReadLabel } from '#core/label/label.ts';
import { checkSolution } from '#core/optimize/checkSolution.ts';
import type { LinearSolver, Objective, OpenModel, Term } from '#core/optimize/linearModel.ts';
import { type Interval, intersect } from '#core/quantity/interval.ts';
import type { LargerReference } from '#core/reference/largerReference.ts';
import { absorbedFractions } from './absorbed.ts';
import { type Traced, traced } from './content.ts';
import { contradiction } from './contradiction.ts';
import { foodKind, isPhosphate } from './foodKind.ts';
import { additiveLimits } from './limits.ts';
import type { Conflict, Driver, MineralEstimate, MineralRange, NoEstimate } from './minerals.ts';
import type { PrintedServingFacts } from './printedServing.ts';
import { type RecipeModel, recipeModel } from './recipeModel.ts';
import { type RecipeTree, recipeTree } from './recipeTree.ts';
import type { RecipeSample } from './sample/drawMinerals.ts';
import { sampleRecipes } from './sampleRecipes.ts';
import { dryShare } from './waterLost.ts';

/** Grows whenever the same label could give another estimate: kept estimates of an older version are made anew. */
export const mineralModelVersion = 3;

/**
 * Phosphorus and potassium of one serving from the statement, the panel and the composition table: bounds from a linear
 * model of the recipe, likely values from recipes drawn within it. docs/minerals.md explains the method. `larger` are imported
 * composition tables, asked for the ingredients that our own does not know.
 */
export function estimateMinerals(label: ReadLabel, solver: LinearSolver, larger?: LargerReference): MineralEstimate | NoEstimate {
  const { statement } = label;
  if (statement === undefined) return cannot('the label has no ingredient statement');
  if (statement.ingredients.length === 0) return cannot('the ingredient statement could not be read');
  if (label.printed.state === 'as-prepared')
    return cannot('the panel is for the food as prepared, and the statement for what is in the package');
  const servingGrams = massOf(label);
  if (servingGrams === undefined || servingGrams.lo <= 0) return cannot('the label does not say what its panel’s quantity weighs in grams');
  const tree = recipeTree(statement.ingredients, label.additives, larger);
  const printed = printedRanges(label);
  if (Object.keys(printed).length === 0) return cannot('the panel prints none of the figures that bound a recipe');
  const facts: PrintedServingFacts = { servingG: servingGrams, printed };
  const kind = foodKind(tree, dryShare(facts));
  const recipe = recipeModel(tree, kind, facts);
  const bounds = solver.solve(recipe.model, open => findBounds(open, recipe, tree, printed));
  if (typeof bounds === 'string') return cannot(bounds);
  const ends = [bounds.phosphorus, bounds.potassium, bounds.addedPhosphorus, bounds.addedPotassium];
  if (!ends.every(({ hi }) => Number.isFinite(hi))) return cannot('the search for the ends was not done in time');
  const sample = sampleRecipes(tree, kind, facts, recipe, bounds.inside, seedOf(statement.text));
  return {
    kind: 'estimate',
    servingG: servingGrams,
    phosphorus: rangeOf(bounds.phosphorus, sample.phosphorusMg),
    potassium: rangeOf(bounds.potassium, sample.potassiumMg),
    addedPhosphorus: rangeOf(bounds.addedPhosphorus, sample.addedPhosphorusMg),
    addedPotassium: rangeOf(bounds.addedPotassium, sample.addedPotassiumMg),
    absorbedPhosphorus: absorbed(tree, sample, bounds.phosphorus),
    matchedShare: matchedShare(tree, sample),
    phosphorusDrivers: drivers(tree, sample.phosphorusOf, sample.phosphorusMg),
    potassiumDrivers: drivers(tree, sample.potassiumOf, sample.potassiumMg),
    limits: bounds.limits,
    conflicts: bounds.conflicts,
  };
}

/** Grams of what the amounts are for. */
function massOf({ printed: { basis }, servingGrams }: ReadLabel): Interval | undefined {
  if (basis === 'per-100-g') return { lo: 100, hi: 100 };
  return basis === 'per-serving' ? servingGrams : undefined;
}

function cannot(because: string): NoEstimate {
  return { kind: 'cannot-be-bounded', because };
}

function printedRanges({ amounts }: ReadLabel): Partial<Record<Traced, Interval>> {
  return Object.fromEntries(
    traced.flatMap(nutrient => {
      const amount = amounts[nutrient];
      return amount.kind === 'known' && amount.source === 'printed' ? [[nutrient, amount.range]] : [];
    }),
  );
}

type Bounds = Pick<MineralEstimate, 'limits'> & {
  readonly phosphorus: Interval;
  readonly potassium: Interval;
  readonly addedPhosphorus: Interval;
  readonly addedPotassium: Interval;
  readonly conflicts: readonly Conflict[];
  /** Mean of the extreme recipes: inside the model. */
  readonly inside: Float64Array;
};

/**
 * Relaxes the label by the least total amount, then looks for the ends of each mineral. Where it had to be relaxed, every
 * row may give way by as much again as all of them had to: which one is wrong is not known, and the one answer of the solver
 * would be a narrow guess. A text when even the hard rows contradict, or the label says too little of its recipe.
 */
function findBounds(
  open: OpenModel,
  recipe: RecipeModel,
  { leaves }: RecipeTree,
  printed: PrintedServingFacts['printed'],
): Bounds | string {
  const { excess, meanings } = recipe;
  const relaxing: Objective = { sense: 'minimum', terms: [...excess.values()].map(({ at, cost }) => ({ at, coefficient: cost })) };
  const relaxed = open.optimize(relaxing);
  if (relaxed.kind !== 'optimal') return 'no recipe keeps the order, the thresholds and the mass that the label tells';
  refuseBroken(recipe, relaxing, relaxed.value, relaxed.columns);
  const conflicts = [...excess].flatMap(([row, { at, cost }]): readonly Conflict[] => {
    const by = relaxed.columns[at]!;
    // Half a percent of a row's size lies within what tables and rounding leave open.
    return by * cost > 5e-3 ? [{ meaning: meanings[row]!, by }] : [];
  });
  const because = contradiction(conflicts, recipe);
  if (because !== undefined) return because;
  const further = conflicts.length === 0 ? 1e-7 : relaxed.value;
  for (const { at, cost } of excess.values()) open.lowerTo(at, relaxed.columns[at]! * 1.000001 + further / cost);
  const inside = new Float64Array(recipe.model.columns.length);
  let seen = 0;
  const end = (sense: Objective['sense'], terms: readonly Term[]): number | undefined => {
    const solution = open.optimize({ sense, terms });
    if (solution.kind !== 'optimal') return undefined;
    refuseBroken(recipe, { sense, terms }, solution.value, solution.columns);
    seen += 1;
    for (let at = 0; at < inside.length; at++) inside[at]! += (solution.columns[at]! - inside[at]!) / seen;
    return Math.max(0, solution.value);
  };
  const ends = (nutrient: Traced, of?: (leaf: number) => boolean): Interval => {
    const lo = end('minimum', recipe.least(nutrient, of)) ?? 0;
    return { lo, hi: Math.max(lo, end('maximum', recipe.most(nutrient, of)) ?? Number.POSITIVE_INFINITY) };
  };
  /** A mineral that is printed lies in its printed range as well, unless the label had to be relaxed. */
  const endsOfAll = (nutrient: Traced): Interval => {
    const range = ends(nutrient);
    const own = conflicts.length === 0 ? printed[nutrient] : undefined;
    return (own && intersect(range, own)) ?? range;
  };
  const adds = (leaf: number): boolean => leaves[leaf]!.additive !== undefined;
  const phosphates = (leaf: number): boolean => isPhosphate(leaves[leaf]!);
  const none: Interval = { lo: 0, hi: 0 };
  return {
    phosphorus: endsOfAll('phosphorusMg'),
    potassium: endsOfAll('potassiumMg'),
    addedPhosphorus: leaves.some(isPhosphate) ? ends('phosphorusMg', phosphates) : none,
    addedPotassium: leaves.some(({ additive, content }) => additive !== undefined && content.per1G.potassiumMg.hi > 0)
      ? ends('potassiumMg', adds)
      : none,
    limits: additiveLimits(open, recipe, leaves),
    conflicts,
    inside,
  };
}

/** The solver's answers are looked at again; one that breaks the model is a mistake of ours, not of the label. */
function refuseBroken({ model }: RecipeModel, objective: Objective, value: number, columns: Float64Array): void {
  const broken = checkSolution(model, objective, value, columns);
  if (broken.length > 0) throw new RangeError(`the solver's answer breaks the model: ${broken[0]}`);
}

function rangeOf(sure: Interval, drawn: Float64Array): MineralRange {
  const sorted = drawn.toSorted();
  const at = (share: number): number => Math.min(sure.hi, Math.max(sure.lo, sorted[Math.floor(share * (sorted.length - 1))]!));
  return { sure, likely: { lo: at(0.05), mid: at(0.5), hi: at(0.95) } };
}

/** Draws that lie outside the sure range count as its end, as they do in the likely value. */
function absorbed({ leaves }: RecipeTree, sample: RecipeSample, sure: Interval): Interval {
  const count = sample.phosphorusMg.length;
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  for (const [leaf, { content }] of leaves.entries()) {
    const { lo, hi } = absorbedFractions[content.phosphorusKind];
    for (let at = 0; at < count; at++) {
      low[at]! += lo * sample.phosphorusOf[leaf]![at]!;
      high[at]! += hi * sample.phosphorusOf[leaf]![at]!;
    }
  }
  for (const [at, whole] of sample.phosphorusMg.entries()) {
    const confined = whole === 0 ? 1 : Math.min(sure.hi, Math.max(sure.lo, whole)) / whole;
    low[at]! *= confined;
    high[at]! *= confined;
  }
  return { lo: low.sort()[Math.floor(0.05 * (count - 1))]!, hi: high.sort()[Math.floor(0.95 * (count - 1))]! };
}

function matchedShare({ leaves }: RecipeTree, { grams }: RecipeSample): number {
  let known = 0;
  let all = 0;
  for (const recipe of grams) {
    for (const [leaf, { taken }] of leaves.entries()) {
      all += recipe[leaf]!;
      if (taken === 'reference' || taken === 'additive' || taken === 'salt') known += recipe[leaf]!;
    }
  }
  return all === 0 ? 0 : known / all;
}

function drivers({ leaves }: RecipeTree, of: readonly Float64Array[], whole: Float64Array): readonly Driver[] {
  const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const total = mean(whole);
  return leaves
    .map(({ name }, leaf) => ({ name, mg: mean(of[leaf]!), share: total === 0 ? 0 : mean(of[leaf]!) / total }))
    .filter(({ share }) => share >= 0.05)
    .sort((a, b) => b.mg - a.mg)
    .slice(0, 5);
}

/** FNV-1a of the statement: the same label gives the same draws. */
function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return hash >>> 0;
}
