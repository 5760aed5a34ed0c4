import { type Figure, type Traced, traced } from './content.ts';
import { type FoodKind, isPhosphate, typicalPhosphates } from './foodKind.ts';
import type { PrintedServingFacts } from './printedServing.ts';
import { type RandomNumbers, randomNumbers } from './randomNumbers.ts';
import type { RecipeModel } from './recipeModel.ts';
import type { RecipeTree } from './recipeTree.ts';
import { typicalWaterLost } from './waterLost.ts';

/** Recipes drawn from all that the label allows, each with its minerals in milligrams per serving. */
export interface RecipeSample {
  /** Grams of each leaf in a serving. */
  readonly grams: readonly Float64Array[];
  readonly phosphorusMg: Float64Array;
  readonly potassiumMg: Float64Array;
  readonly addedPhosphorusMg: Float64Array;
  readonly addedPotassiumMg: Float64Array;
  /** Phosphorus of each leaf in each recipe. */
  readonly phosphorusOf: readonly Float64Array[];
  readonly potassiumOf: readonly Float64Array[];
}

const burnIn = 500;
const kept = 500;
const stepsBetween = 4;
/** One standard deviation of a reference figure, as a share of the half width of its spread. */
const deviation = 0.8;
/** The same of a mineral: rows of SR28 are off by more than the middle of what their names cover. */
const mineralDeviation = 1.35;
/** How much of a food's excess of protein over the table goes along with its phosphorus (own decision, from the ratio's smaller spread). */
const phosphorusFollowsProtein = 0.6;

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
  const move = mover(x, hard, observed, decay, random);

  const step = (): void => {
    direction.fill(0);
    if (random.uniform() < 0.5) exchange(direction, n, random.uniform);
    else wander(direction, random.normal);
    move(direction);
  };
  for (let i = 0; i < burnIn; i++) step();
  const sample = emptySample(n);
  const draw = drawMinerals(tree, facts, random.normal);
  for (let at = 0; at < kept; at++) {
    for (let i = 0; i < stepsBetween; i++) step();
    draw(x, sample, at);
  }
  return sample;
}

interface HardRow {
  readonly coefficients: Float64Array;
  readonly lo: number;
  readonly hi: number;
}

/** Rows over grams and water alone, as arrays; an end that the start breaks by rounding or a relaxed row is moved to it. */
function hardRows({ model, meanings }: RecipeModel, size: number, x: Float64Array): readonly HardRow[] {
  const rows: HardRow[] = [];
  for (const [at, { terms, lo, hi }] of model.rows.entries()) {
    const { kind } = meanings[at]!;
    if (kind === 'printed' || kind === 'tie') continue;
    const coefficients = new Float64Array(size);
    for (const term of terms) if (term.at < size) coefficients[term.at] = term.coefficient;
    const now = dot(coefficients, x);
    rows.push({ coefficients, lo: Math.min(lo, now), hi: Math.max(hi, now) });
  }
  for (let at = 0; at < size; at++) {
    const coefficients = new Float64Array(size);
    coefficients[at] = 1;
    x[at] = Math.max(0, x[at]!);
    rows.push({ coefficients, lo: 0, hi: model.columns[at]!.hi });
  }
  return rows;
}

interface Observation {
  readonly coefficients: Float64Array;
  readonly mean: number;
  readonly variance: number;
}

/** Each printed figure as a normal over the most likely contents. */
function observations({ leaves }: RecipeTree, { printed }: PrintedServingFacts, x: Float64Array, serving: number): readonly Observation[] {
  const size = leaves.length + 1;
  return traced.flatMap(nutrient => {
    const range = printed[nutrient];
    if (range === undefined || !Number.isFinite(range.hi)) return [];
    const coefficients = new Float64Array(size);
    let variance = (range.hi - range.lo) ** 2 / 12 + (serving * floorOf[nutrient]) ** 2;
    for (const [at, { content, taken }] of leaves.entries()) {
      const figure = content.per1G[nutrient];
      coefficients[at] = figure.mid;
      const sd = taken === 'unknown' || taken === 'trifle' ? (figure.hi - figure.lo) / 8 : spreadOf(figure);
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

function spreadOf({ lo, hi }: Figure): number {
  return ((hi - lo) / 2) * deviation;
}

/** What additives typically are, as normals: all phosphates together by kind of food, every other salt by its own level. */
function typicalUse({ leaves }: RecipeTree, kind: FoodKind, serving: number): readonly Observation[] {
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
function decays({ leaves }: RecipeTree, facts: PrintedServingFacts, serving: number): Float64Array {
  const decay = new Float64Array(leaves.length + 1);
  for (const [at, leaf] of leaves.entries()) {
    if (leaf.typicalG !== undefined && leaf.additive === undefined) decay[at] = 1 / ((leaf.typicalG / 100) * serving);
  }
  decay[leaves.length] = 1 / typicalWaterLost(facts);
  return decay;
}

/** A little of one thing for as much of another. */
function exchange(direction: Float64Array, leaves: number, uniform: () => number): void {
  const first = Math.floor(uniform() * (leaves + 1));
  let second = Math.floor(uniform() * leaves);
  if (second >= first) second += 1;
  direction[first] = 1;
  direction[second] = first === leaves || second === leaves ? 1 : -1;
}

/** Directions along which the balances change little: from the inverse of the posterior's precision, so that narrow valleys are walked lengthwise. */
function gaussianDirections(
  observed: readonly Observation[],
  x: Float64Array,
  serving: number,
  size: number,
): (direction: Float64Array, normal: () => number) => void {
  const precision = Array.from({ length: size }, () => new Float64Array(size));
  for (let i = 0; i < size; i++) precision[i]![i] = 1 / (0.5 * x[i]! + 0.01 * serving) ** 2;
  const mass = Float64Array.from({ length: size }, (_, at) => (at === size - 1 ? -1 : 1));
  for (const { coefficients, variance } of [...observed, { coefficients: mass, variance: (1e-3 * serving) ** 2 }]) {
    for (let i = 0; i < size; i++) {
      const scaled = coefficients[i]! / variance;
      if (scaled !== 0) for (let j = 0; j < size; j++) precision[i]![j]! += scaled * coefficients[j]!;
    }
  }
  const factor = cholesky(precision);
  return (direction, normal) => {
    for (let i = size - 1; i >= 0; i--) {
      let sum = normal();
      for (let j = i + 1; j < size; j++) sum -= factor[j]![i]! * direction[j]!;
      direction[i] = sum / factor[i]![i]!;
    }
    // Mass is kept to the last digit by the largest part.
    let largest = 0;
    let off = 0;
    for (let i = 0; i < size; i++) {
      off += mass[i]! * direction[i]!;
      if (i < size - 1 && x[i]! > x[largest]!) largest = i;
    }
    direction[largest]! -= off;
  };
}

/** Lower factor of a positive definite matrix. */
function cholesky(matrix: readonly Float64Array[]): readonly Float64Array[] {
  const size = matrix.length;
  const factor = Array.from({ length: size }, () => new Float64Array(size));
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= factor[i]![k]! * factor[j]![k]!;
      factor[i]![j] = i === j ? Math.sqrt(Math.max(sum, 1e-300)) : sum / factor[j]![j]!;
    }
  }
  return factor;
}

/** One step: the segment that the hard rows leave on the line, and a draw from the normal cut at its ends. What each row comes to is kept. */
function mover(
  x: Float64Array,
  hard: readonly HardRow[],
  observed: readonly Observation[],
  decay: Float64Array,
  random: RandomNumbers,
): (direction: Float64Array) => void {
  const hardNow = Float64Array.from(hard, ({ coefficients }) => dot(coefficients, x));
  const hardSlope = new Float64Array(hard.length);
  const observedNow = Float64Array.from(observed, ({ coefficients }) => dot(coefficients, x));
  const observedSlope = new Float64Array(observed.length);
  return direction => {
    let from = Number.NEGATIVE_INFINITY;
    let to = Number.POSITIVE_INFINITY;
    // What rounding leaves of a slope of zero is no slope: a row that the direction runs along would stop it.
    const least = 1e-12 * direction.reduce((most, part) => Math.max(most, Math.abs(part)), 0);
    for (let at = 0; at < hard.length; at++) {
      const { coefficients, lo, hi } = hard[at]!;
      const slope = dot(coefficients, direction);
      hardSlope[at] = slope;
      if (Math.abs(slope) < least) continue;
      const now = hardNow[at]!;
      const low = (slope > 0 ? lo - now : hi - now) / slope;
      const high = (slope > 0 ? hi - now : lo - now) / slope;
      if (low > from) from = low;
      if (high < to) to = high;
    }
    if (!(to > from) || !Number.isFinite(from) || !Number.isFinite(to)) return;
    let precision = 0;
    let pull = -dot(decay, direction);
    for (let at = 0; at < observed.length; at++) {
      const { coefficients, mean, variance } = observed[at]!;
      const slope = dot(coefficients, direction);
      observedSlope[at] = slope;
      precision += (slope * slope) / variance;
      pull += (slope * (mean - observedNow[at]!)) / variance;
    }
    const t = random.cutNormal(precision, pull, Math.min(from, 0), Math.max(to, 0));
    for (let i = 0; i < x.length; i++) x[i] = Math.max(0, x[i]! + t * direction[i]!);
    for (let at = 0; at < hard.length; at++) hardNow[at]! += t * hardSlope[at]!;
    for (let at = 0; at < observed.length; at++) observedNow[at]! += t * observedSlope[at]!;
  };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function emptySample(leaves: number): RecipeSample {
  return {
    grams: Array.from({ length: kept }, () => new Float64Array(leaves)),
    phosphorusMg: new Float64Array(kept),
    potassiumMg: new Float64Array(kept),
    addedPhosphorusMg: new Float64Array(kept),
    addedPotassiumMg: new Float64Array(kept),
    phosphorusOf: Array.from({ length: leaves }, () => new Float64Array(kept)),
    potassiumOf: Array.from({ length: leaves }, () => new Float64Array(kept)),
  };
}

/** Draws what the ingredients of a recipe hold: each figure within its spread, phosphorus along with the protein that the label shows in excess. */
function drawMinerals({ leaves }: RecipeTree, { printed }: PrintedServingFacts, normal: () => number) {
  const { proteinG } = printed;
  const hasProtein = proteinG !== undefined && Number.isFinite(proteinG.hi);
  return (x: Float64Array, sample: RecipeSample, at: number): void => {
    let expected = 0;
    let variance = hasProtein ? (proteinG.hi - proteinG.lo) ** 2 / 12 : 1;
    for (const [leaf, { content }] of leaves.entries()) {
      expected += content.per1G.proteinG.mid * x[leaf]!;
      variance += (spreadOf(content.per1G.proteinG) * x[leaf]!) ** 2;
    }
    const excess = hasProtein ? (proteinG.lo + proteinG.hi) / 2 - expected : 0;
    // What nobody knows is drawn once for all of it: eighty unknown ingredients are no surer than one.
    const vague = { phosphorus: normal(), potassium: normal() };
    for (const [leaf, { content, additive, taken }] of leaves.entries()) {
      const grams = x[leaf]!;
      sample.grams[at]![leaf] = grams;
      const { proteinG: protein, phosphorusMg, potassiumMg } = content.per1G;
      const share = (spreadOf(protein) * grams) ** 2 / variance;
      const follows = protein.mid > 0.02 && content.phosphorusKind !== 'inorganic' ? phosphorusFollowsProtein : 0;
      const shift = grams > 0 && protein.mid > 0 ? Math.max(-0.5, Math.min(0.5, (follows * share * excess) / (protein.mid * grams))) : 0;
      const isVague = taken === 'unknown' || taken === 'trifle';
      const phosphorus = (isVague ? vaguely(phosphorusMg, vague.phosphorus) : drawn(phosphorusMg, normal)) * (1 + shift) * grams;
      const potassium = (isVague ? vaguely(potassiumMg, vague.potassium) : drawn(potassiumMg, normal)) * grams;
      sample.phosphorusOf[leaf]![at] = phosphorus;
      sample.potassiumOf[leaf]![at] = potassium;
      sample.phosphorusMg[at]! += phosphorus;
      sample.potassiumMg[at]! += potassium;
      if (additive !== undefined) {
        if (isPhosphate(leaves[leaf]!)) sample.addedPhosphorusMg[at]! += phosphorus;
        sample.addedPotassiumMg[at]! += potassium;
      }
    }
  };
}

/** A figure within its spread. */
function drawn(figure: Figure, normal: () => number): number {
  if (figure.hi === figure.lo) return figure.mid;
  return Math.max(0, figure.mid + ((figure.hi - figure.lo) / 2) * mineralDeviation * normal());
}

/** What nobody knows is skewed: mostly little, seldom much. */
function vaguely({ mid, hi }: Figure, z: number): number {
  return Math.min(hi, mid * Math.exp(0.8 * z - 0.32));
}
