import { describe, expect, it } from 'vitest';
import { exactly } from '#core/quantity/interval.ts';
import type { PrintedServingFacts } from '../printedServing.ts';
import { randomNumbers } from '../randomNumbers.ts';
import { treeOf } from '../recipeFixture.ts';
import type { RecipeTree } from '../recipeTree.ts';
import { drawMinerals, emptySample } from './drawMinerals.ts';

const array = (...values: number[]): Float64Array => Float64Array.from(values);

describe('what a drawn recipe holds', () => {
  const drawnOf = (tree: RecipeTree, x: Float64Array, printed: PrintedServingFacts['printed'], z: number) => {
    const sample = emptySample(tree.leaves.length, 1);
    drawMinerals(tree, { servingG: exactly(100), printed }, () => z)(x, sample, 0);
    return {
      grams: [...sample.grams[0]!],
      phosphorus: sample.phosphorusOf.map(of => of[0]!),
      potassium: sample.potassiumOf.map(of => of[0]!),
      whole: [sample.phosphorusMg[0]!, sample.potassiumMg[0]!],
      added: [sample.addedPhosphorusMg[0]!, sample.addedPotassiumMg[0]!],
    };
  };
  const figures = (tree: RecipeTree) => tree.leaves.map(({ content }) => content.per1G);

  it('the middle of the table where nothing is drawn off it, and sums over the leaves', () => {
    const tree = treeOf('Milk, dipotassium phosphate, potassium lactate');
    const [milk, phosphate, lactate] = figures(tree);
    const { grams, phosphorus, potassium, whole, added } = drawnOf(tree, array(90, 1, 2, 0), {}, 0);
    expect(grams).toEqual([90, 1, 2]);
    expect(phosphorus).toEqual([milk!.phosphorusMg.mid * 90, phosphate!.phosphorusMg.mid, 0]);
    expect(potassium).toEqual([milk!.potassiumMg.mid * 90, phosphate!.potassiumMg.mid, 2 * lactate!.potassiumMg.mid]);
    expect(whole[0]).toBeCloseTo(phosphorus[0]! + phosphorus[1]!, 9);
    expect(whole[1]).toBeCloseTo(potassium[0]! + potassium[1]! + potassium[2]!, 9);
    // Of phosphorus the phosphates alone are added, of potassium every additive.
    expect(added).toEqual([phosphorus[1], potassium[1]! + potassium[2]!]);
  });

  it('off the middle by 1.35 halves of the spread for one deviation; never below nothing', () => {
    const tree = treeOf('Milk');
    const { lo, mid, hi } = figures(tree)[0]!.potassiumMg;
    expect(drawnOf(tree, array(100, 0), {}, 1).potassium[0]).toBeCloseTo(100 * (mid + (1.35 * (hi - lo)) / 2), 9);
    expect(drawnOf(tree, array(100, 0), {}, -50).potassium[0]).toBe(0);
  });

  it('what nobody knows is skewed, with the mean of the table’s middle, and never more than it may hold', () => {
    const tree = treeOf('Zantle, natural flavor');
    const [zantle, flavor] = figures(tree);
    const one = drawnOf(tree, array(50, 1, 0), {}, 1).phosphorus;
    expect(one[0]).toBeCloseTo(50 * zantle!.phosphorusMg.mid * Math.exp(0.48), 9);
    expect(one[1]).toBeCloseTo(flavor!.phosphorusMg.mid * Math.exp(0.48), 9);
    expect(drawnOf(tree, array(50, 1, 0), {}, 9).phosphorus[0]).toBe(50 * zantle!.phosphorusMg.hi);
    const potassium = drawnOf(tree, array(50, 1, 0), {}, 1).potassium;
    expect(potassium[0]).toBeCloseTo(50 * zantle!.potassiumMg.mid * Math.exp(0.48), 9);
    expect(potassium[1]).toBeCloseTo(flavor!.potassiumMg.mid * Math.exp(0.48), 9);
    const { normal } = randomNumbers(2);
    const all = Array.from({ length: 5_000 }, () => drawnOf(tree, array(1, 0, 0), {}, normal()).phosphorus[0]!);
    expect(all.reduce((sum, one) => sum + one, 0) / all.length).toBeCloseTo(zantle!.phosphorusMg.mid, 1);
  });

  it('[RCP-6] phosphorus goes along with the protein that the label shows beside the table', () => {
    const tree = treeOf('Milk');
    const { proteinG, phosphorusMg } = figures(tree)[0]!;
    const middle = 100 * phosphorusMg.mid;
    const drawn = (protein: { lo: number; hi: number }) => drawnOf(tree, array(100, 0), { proteinG: protein }, 0).phosphorus[0]! / middle;
    expect(drawn(exactly(100 * proteinG.mid))).toBeCloseTo(1, 9);
    // All of the excess falls to the one leaf; its phosphorus follows by six tenths of it.
    expect(drawn(exactly(110 * proteinG.mid))).toBeCloseTo(1.06, 9);
    expect(drawn(exactly(90 * proteinG.mid))).toBeCloseTo(0.94, 9);
    // A wide figure tells less.
    const sd = (0.8 * 100 * (proteinG.hi - proteinG.lo)) / 2;
    const wide = { lo: 110 * proteinG.mid - 1, hi: 110 * proteinG.mid + 1 };
    expect(drawn(wide)).toBeCloseTo(1 + 0.06 * (sd ** 2 / (sd ** 2 + 4 / 12)), 9);
    // By half at most either way; and not at all without a figure.
    expect(drawn(exactly(50))).toBeCloseTo(1.5, 9);
    expect(drawn(exactly(0))).toBeCloseTo(0.5, 9);
    expect(drawn({ lo: 3, hi: Number.POSITIVE_INFINITY })).toBeCloseTo(1, 9);
  });
});
