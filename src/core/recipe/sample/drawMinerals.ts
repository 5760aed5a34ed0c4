import type { Figure } from '../content.ts';
import { isPhosphate } from '../foodKind.ts';
import type { PrintedServingFacts } from '../printedServing.ts';
import type { RecipeTree } from '../recipeTree.ts';
import { figureDeviation } from './figureDeviation.ts';

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

/** One standard deviation of a mineral's figure, as a share of the half width of its spread: rows of SR28 are off by more than the middle of what their names cover. */
const mineralDeviation = 1.35;
/** How much of a food's excess of protein over the table goes along with its phosphorus (own decision, from the ratio's smaller spread). */
const phosphorusFollowsProtein = 0.6;

/** Room for so many draws, all zeros. */
export function emptySample(leaves: number, kept: number): RecipeSample {
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
export function drawMinerals({ leaves }: RecipeTree, { printed }: PrintedServingFacts, normal: () => number) {
  const { proteinG } = printed;
  const hasProtein = proteinG !== undefined && Number.isFinite(proteinG.hi);
  return (x: Float64Array, sample: RecipeSample, at: number): void => {
    let expected = 0;
    let variance = hasProtein ? (proteinG.hi - proteinG.lo) ** 2 / 12 : 1;
    for (const [leaf, { content }] of leaves.entries()) {
      expected += content.per1G.proteinG.mid * x[leaf]!;
      variance += (figureDeviation(content.per1G.proteinG) * x[leaf]!) ** 2;
    }
    const excess = hasProtein ? (proteinG.lo + proteinG.hi) / 2 - expected : 0;
    // What nobody knows is drawn once for all of it: eighty unknown ingredients are no surer than one.
    const vague = { phosphorus: normal(), potassium: normal() };
    for (const [leaf, { content, additive, taken }] of leaves.entries()) {
      const grams = x[leaf]!;
      sample.grams[at]![leaf] = grams;
      const { proteinG: protein, phosphorusMg, potassiumMg } = content.per1G;
      const share = (figureDeviation(protein) * grams) ** 2 / variance;
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
