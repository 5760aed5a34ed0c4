import { describe, expect, it } from 'vitest';
import { openHighsSolver } from '#adapters/solver/highsSolver.ts';
import { exactly } from '#core/quantity/interval.ts';
import type { Traced } from './content.ts';
import { foodKind } from './foodKind.ts';
import type { PrintedServingFacts } from './printedServing.ts';
import { treeOf } from './recipeFixture.ts';
import { type RowMeaning, recipeModel } from './recipeModel.ts';
import { dryShare } from './waterLost.ts';

const solver = await openHighsSolver();

const modelOf = (statement: string, facts: PrintedServingFacts = { servingG: exactly(100), printed: {} }) => {
  const tree = treeOf(statement);
  return { tree, ...recipeModel(tree, foodKind(tree, dryShare(facts)), facts) };
};
const kindsOf = (meanings: readonly RowMeaning[], kind: RowMeaning['kind']) => meanings.filter(meaning => meaning.kind === kind);

/** Grams of one leaf in 100 g of food at most and at least, when the label is not relaxed. */
function gramsOf(statement: string, name: string, printed: Partial<Record<Traced, ReturnType<typeof exactly>>> = {}) {
  const { tree, model, excess } = modelOf(statement, { servingG: exactly(100), printed });
  const at = tree.leaves.findIndex(leaf => leaf.name === name);
  return solver.solve(model, open => {
    for (const { at: column } of excess.values()) open.lowerTo(column, 0);
    const [lo, hi] = (['minimum', 'maximum'] as const).map(sense => {
      const answer = open.optimize({ sense, terms: [{ at, coefficient: 1 }] });
      return answer.kind === 'optimal' ? answer.value : Number.NaN;
    });
    return { lo: lo!, hi: hi! };
  });
}

describe('recipeModel', () => {
  it('[RCP-3] a level stands in descending order, and so do the parts of a heading (21 CFR 101.4(a)(1))', () => {
    const { meanings } = modelOf('Sugar, water, leavening (baking soda, monocalcium phosphate), salt');
    expect(kindsOf(meanings, 'order')).toEqual([
      { kind: 'order', first: 'Sugar', second: 'water' },
      { kind: 'order', first: 'water', second: 'leavening' },
      { kind: 'order', first: 'baking soda', second: 'monocalcium phosphate' },
      { kind: 'order', first: 'leavening', second: 'salt' },
    ]);
  });

  it('[RCP-3] what stands behind a threshold, is left open, or is a component stands in no order', () => {
    expect(kindsOf(modelOf('Water, sugar, contains 2% or less of salt, pectin').meanings, 'order')).toEqual([
      { kind: 'order', first: 'Water', second: 'sugar' },
    ]);
    expect(kindsOf(modelOf('Crust: flour, water. Filling: apples, sugar.').meanings, 'order')).toEqual([
      { kind: 'order', first: 'flour', second: 'water' },
      { kind: 'order', first: 'apples', second: 'sugar' },
    ]);
    expect(kindsOf(modelOf('Water, soybean and/or canola oil, salt').meanings, 'order')).toHaveLength(2);
  });

  it('[RCP-3] the third of three in order is at most a third, the first at least one', () => {
    const statement = 'Sugar, cocoa, nonfat dry milk';
    // Nothing that could boil off: sugar, fat and protein are nearly all of it, and what is dry may lose water; so only order and mass count.
    const none = { fatG: exactly(0), carbohydrateG: exactly(0), proteinG: exactly(0) };
    const { tree, model } = modelOf(statement, { servingG: exactly(100), printed: none });
    const rows = model.rows.filter(({ name }) => /order|mass/.test(name));
    const columns = model.columns.map((column, at) => (at === tree.leaves.length ? { ...column, hi: 0 } : column));
    const ends = solver.solve({ columns, rows }, open =>
      [
        open.optimize({ sense: 'maximum', terms: [{ at: 2, coefficient: 1 }] }),
        open.optimize({ sense: 'minimum', terms: [{ at: 0, coefficient: 1 }] }),
      ].map(answer => (answer.kind === 'optimal' ? answer.value : Number.NaN)),
    );
    expect(ends[0]).toBeCloseTo(100 / 3, 6);
    expect(ends[1]).toBeCloseTo(100 / 3, 6);
  });

  it('[RCP-4] "contains 2% or less of" holds each that follows to 2 % of what went in', () => {
    const { meanings } = modelOf('Water, sugar, contains 2% or less of salt, pectin');
    expect(kindsOf(meanings, 'threshold')).toEqual([
      { kind: 'threshold', name: 'salt', percent: 2 },
      { kind: 'threshold', name: 'pectin', percent: 2 },
    ]);
    const wet = { fatG: exactly(0), carbohydrateG: exactly(10), proteinG: exactly(0) };
    // Dry share 0.1: at most 0.1 + 1.3 × 0.1 of the serving left as water, so 2 % of at most 123 g.
    const { hi } = gramsOf('Water, sugar, contains 2% or less of salt', 'salt', wet);
    expect(hi).toBeGreaterThan(2 - 1e-6);
    expect(hi).toBeLessThan(0.02 * 123 + 1e-6);
  });

  it('[RCP-4] a printed percentage holds to a tenth and half a percent either way', () => {
    const wet = { fatG: exactly(0), carbohydrateG: exactly(0), proteinG: exactly(10) };
    const { lo, hi } = gramsOf('Zantle protein (60%), water', 'Zantle protein', wet);
    expect(lo).toBeGreaterThanOrEqual(54 - 1e-6);
    expect(hi).toBeLessThanOrEqual(0.665 * 123 + 1e-6);
  });

  it('[RCP-5] all phosphates of a meat together are at most 0.5 % of it (9 CFR 424.21(c))', () => {
    const panel = { fatG: exactly(1), carbohydrateG: exactly(0), proteinG: exactly(18) };
    const { hi } = gramsOf(
      'Turkey breast, water, salt, sodium tripolyphosphate, sodium hexametaphosphate',
      'sodium tripolyphosphate',
      panel,
    );
    expect(hi).toBeCloseTo(0.5, 6);
  });

  it('[RCP-5] calcium phosphates have room to fortify, whether calcium is printed or not', () => {
    const statement = 'Water, sugar, soy protein, tricalcium phosphate';
    for (const calciumMg of [undefined, exactly(120)]) {
      const { meanings } = modelOf(statement, { servingG: exactly(100), printed: calciumMg === undefined ? {} : { calciumMg } });
      expect(kindsOf(meanings, 'ceiling')).toEqual([expect.objectContaining({ name: 'calcium phosphates' })]);
    }
  });

  it('[RCP-6] the phosphorus of a food goes with its protein, that of a salt does not', () => {
    const { meanings } = modelOf('Milk, sugar, disodium phosphate');
    expect(new Set(kindsOf(meanings, 'tie').map(meaning => 'name' in meaning && meaning.name))).toEqual(new Set(['Milk']));
  });

  it('[RCP-7] what goes in less the water that leaves is the serving; only water that was there leaves', () => {
    const { model, meanings, leaves } = modelOf('Oats, sugar, honey', {
      servingG: exactly(30),
      printed: { fatG: exactly(2), carbohydrateG: exactly(23), proteinG: exactly(3) },
    });
    const grams = solver.solve(model, open => {
      const answer = open.optimize({ sense: 'maximum', terms: [{ at: leaves, coefficient: 1 }] });
      return answer.kind === 'optimal' ? answer.columns : new Float64Array();
    });
    const inside = [...grams.subarray(0, leaves)].reduce((sum, one) => sum + one, 0);
    expect(inside - grams[leaves]!).toBeCloseTo(30, 6);
    expect(kindsOf(meanings, 'moisture')).toHaveLength(1);
    // Oats, sugar and honey have some 10, 0 and 17 g of water in 100 g (SR28 08120, 19335, 19296).
    expect(grams[leaves]! / inside).toBeLessThan(0.2);
  });

  it('[RCP-7] a printed figure is two rows: what the ingredients hold at least is at most its upper end, and the reverse', () => {
    const { model, meanings } = modelOf('Milk, sugar', { servingG: exactly(100), printed: { proteinG: { lo: 2.5, hi: 3.5 } } });
    const rows = meanings.flatMap((meaning, at) =>
      meaning.kind === 'printed' ? [{ ...meaning, lo: model.rows[at]!.lo, hi: model.rows[at]!.hi }] : [],
    );
    expect(rows).toEqual([
      { kind: 'printed', nutrient: 'proteinG', side: 'most', lo: Number.NEGATIVE_INFINITY, hi: 3.5 },
      { kind: 'printed', nutrient: 'proteinG', side: 'least', lo: 2.5, hi: Number.POSITIVE_INFINITY },
    ]);
  });
});
