import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openHighsSolver } from '#adapters/solver/highsSolver.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { exactly, type Interval, scale } from '#core/quantity/interval.ts';
import { printedLabel } from '#data/demo/labels.ts';
import { demoFoods } from '#data/demo/recipes.ts';
import { compositionPer100G } from '#data/packages/composition.ts';
import { type Traced, traced } from './content.ts';
import { foodKind } from './foodKind.ts';
import type { PrintedServingFacts } from './printedServing.ts';
import { treeOf } from './recipeFixture.ts';
import { recipeModel } from './recipeModel.ts';
import type { RecipeTree } from './recipeTree.ts';
import { sampleRecipes } from './sampleRecipes.ts';
import { dryShare } from './waterLost.ts';

const solver = await openHighsSolver();
const numRuns = process.env.PLATEWRIGHT_LONG ? 100_000 : 100;

/** The demo's foods: their statements, and their figures before any rounding. */
const foods = Object.values(demoFoods)
  .flat()
  .map(food => {
    const { statement = '' } = printedLabel(food);
    const { servingGrams, amounts } = readLabel(printedLabel(food));
    const printed = Object.fromEntries(
      traced.flatMap(nutrient => {
        const amount = amounts[nutrient];
        return amount.kind === 'known' && amount.source === 'printed' ? [[nutrient, amount.range] as const] : [];
      }),
    ) as Partial<Record<Traced, Interval>>;
    return { id: food.id, statement, servingG: servingGrams!, printed, per100G: compositionPer100G(food), grams: food.serving.grams };
  });

type Ends = readonly Interval[];

/** Least and most of both minerals; undefined where the label would have to be relaxed. */
function sureEnds(tree: RecipeTree, facts: PrintedServingFacts): Ends | undefined {
  const recipe = recipeModel(tree, foodKind(tree, dryShare(facts)), facts);
  return solver.solve(recipe.model, open => {
    for (const { at } of recipe.excess.values()) open.lowerTo(at, 0);
    const end = (sense: 'minimum' | 'maximum', nutrient: Traced): number => {
      const answer = open.optimize({ sense, terms: sense === 'minimum' ? recipe.least(nutrient) : recipe.most(nutrient) });
      return answer.kind === 'optimal' ? answer.value : Number.NaN;
    };
    const ends = (['phosphorusMg', 'potassiumMg'] as const).map(nutrient => ({
      lo: end('minimum', nutrient),
      hi: end('maximum', nutrient),
    }));
    return ends.some(({ lo, hi }) => Number.isNaN(lo) || Number.isNaN(hi)) ? undefined : ends;
  });
}

function expectWithin(inner: Ends, outer: Ends): void {
  for (const [at, { lo, hi }] of inner.entries()) {
    const room = 1e-6 * Math.max(1, outer[at]!.hi);
    expect(lo).toBeGreaterThanOrEqual(outer[at]!.lo - room);
    expect(hi).toBeLessThanOrEqual(outer[at]!.hi + room);
  }
}

const pick = (printed: PrintedServingFacts['printed'], keys: readonly Traced[]) =>
  Object.fromEntries(keys.flatMap(key => (printed[key] === undefined ? [] : [[key, printed[key]]])));

describe('the sure range', () => {
  it('[RCP-8] law: a figure that comes to a label never widens it', () => {
    let compared = 0;
    fc.assert(
      fc.property(fc.constantFrom(...foods), fc.subarray([...traced]), fc.constantFrom(...traced), (food, keys, added) => {
        const tree = treeOf(food.statement);
        const before = sureEnds(tree, {
          servingG: food.servingG,
          printed: pick(
            food.printed,
            keys.filter(key => key !== added),
          ),
        });
        const after = sureEnds(tree, { servingG: food.servingG, printed: pick(food.printed, [...keys, added]) });
        // A model that is feasible with the figure is so without it.
        if (after === undefined) return;
        compared += 1;
        expectWithin(after, before!);
      }),
      { numRuns },
    );
    expect(compared).toBeGreaterThan(numRuns * 0.9);
  });

  it('[RCP-8] law: a larger threshold never narrows it', () => {
    const withClause = foods.filter(({ statement }) => /\d% or less of/i.test(statement));
    expect(withClause.length).toBeGreaterThan(5);
    let compared = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...withClause),
        fc.tuple(fc.constantFrom(0.5, 1, 1.5, 2, 3, 5), fc.constantFrom(0.5, 1, 1.5, 2, 3, 5)),
        (food, percents) => {
          const [narrow, wide] = percents
            .toSorted((a, b) => a - b)
            .map(percent => sureEnds(treeOf(food.statement.replace(/[\d.]+% or less of/i, `${percent}% or less of`)), food));
          if (narrow === undefined) return;
          compared += 1;
          expectWithin(narrow, wide!);
        },
      ),
      { numRuns },
    );
    expect(compared).toBeGreaterThan(numRuns * 0.5);
  });

  it('[RCP-9] law: on unrounded panels, scaling the serving scales everything', () => {
    let compared = 0;
    fc.assert(
      fc.property(fc.constantFrom(...foods), fc.double({ min: 0.1, max: 10, noNaN: true }), (food, k) => {
        const tree = treeOf(food.statement);
        const facts = unrounded(food);
        const ends = sureEnds(tree, facts);
        const scaled = sureEnds(tree, scaleFacts(facts, k));
        expect(scaled === undefined).toBe(ends === undefined);
        if (ends === undefined || scaled === undefined) return;
        compared += 1;
        for (const [at, { lo, hi }] of ends.entries()) {
          const room = 1e-5 * k * Math.max(1, hi);
          expect(Math.abs(scaled[at]!.lo - k * lo)).toBeLessThan(room);
          expect(Math.abs(scaled[at]!.hi - k * hi)).toBeLessThan(room);
        }
      }),
      { numRuns },
    );
    expect(compared).toBeGreaterThan(numRuns * 0.5);
  });

  it('[RCP-9] the draws scale as well: twice the serving is twice each recipe', () => {
    for (const food of foods.slice(0, 20)) {
      const tree = treeOf(food.statement);
      const facts = unrounded(food);
      const kind = foodKind(tree, dryShare(facts));
      const recipe = recipeModel(tree, kind, facts);
      const start = solver.solve(recipe.model, open => {
        const answer = open.optimize({ sense: 'maximum', terms: recipe.most('phosphorusMg') });
        return answer.kind === 'optimal' ? answer.columns : undefined;
      });
      const twice = scaleFacts(facts, 2);
      const once = sampleRecipes(tree, kind, facts, recipe, start!, 1);
      const doubled = sampleRecipes(
        tree,
        kind,
        twice,
        recipeModel(tree, kind, twice),
        start!.map(grams => 2 * grams),
        1,
      );
      for (const [at, mg] of once.phosphorusMg.entries())
        expect(Math.abs(doubled.phosphorusMg[at]! - 2 * mg), food.id).toBeLessThan(1e-6 * mg + 1e-9);
    }
  });
});

function unrounded({ per100G, grams }: (typeof foods)[number]): PrintedServingFacts {
  const known = per100G as Readonly<Record<string, number | undefined>>;
  const keys = traced.filter(key => key !== 'phosphorusMg' && key !== 'potassiumMg' && known[key] !== undefined);
  return { servingG: exactly(grams), printed: Object.fromEntries(keys.map(key => [key, exactly((known[key]! * grams) / 100)])) };
}

function scaleFacts({ servingG, printed }: PrintedServingFacts, k: number): PrintedServingFacts {
  return {
    servingG: scale(servingG, k),
    printed: Object.fromEntries(Object.entries(printed).map(([key, range]) => [key, scale(range, k)])),
  };
}
