import { expect, it } from 'vitest';
import { exactly } from '#core/quantity/interval.ts';
import { foodKind } from './foodKind.ts';
import type { PrintedServingFacts } from './printedServing.ts';
import { treeOf } from './recipeFixture.ts';
import { type RowMeaning, recipeModel } from './recipeModel.ts';
import { dryShare } from './waterLost.ts';

const modelOf = (statement: string, facts: PrintedServingFacts) => {
  const tree = treeOf(statement);
  return { tree, ...recipeModel(tree, foodKind(tree, dryShare(facts)), facts) };
};

/** The first row of a kind: by leaf what a gram of it adds, what the water that left does, the row's ends, and what breaking it costs. */
const rowOf = (statement: string, facts: PrintedServingFacts, is: (meaning: RowMeaning) => boolean) => {
  const { model, meanings, excess, leaves } = modelOf(statement, facts);
  const at = meanings.findIndex(is);
  const { terms, lo, hi } = model.rows[at]!;
  const added = (column: number) =>
    Math.round(terms.filter(term => term.at === column).reduce((sum, { coefficient }) => sum + coefficient, 0) * 1e9) / 1e9;
  const own = excess.get(at);
  return {
    grams: Array.from({ length: leaves }, (_, leaf) => added(leaf)),
    waterLeft: added(leaves),
    ends: [lo, hi],
    ...(own === undefined ? {} : { excess: added(own.at), cost: own.cost }),
  };
};
const [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
const wet = { fatG: exactly(0), carbohydrateG: exactly(10), proteinG: exactly(0) };

it('[RCP-7] mass: what goes in less what leaves is the serving, in its range', () => {
  expect(rowOf('Water, sugar', { servingG: { lo: 95, hi: 105 }, printed: wet }, ({ kind }) => kind === 'mass')).toEqual({
    grams: [1, 1],
    waterLeft: -1,
    ends: [95, 105],
  });
  const moisture = rowOf('Water, sugar', { servingG: exactly(100), printed: wet }, ({ kind }) => kind === 'moisture');
  // Sugar has 0.02 g of water in 100, and at most 2 g by the spread of water.
  expect(moisture).toEqual({ grams: [1, 0.02022], waterLeft: -1, ends: [0, most] });
  // At most 0.1 and 1.3 times the dry share of the serving left.
  expect(modelOf('Water, sugar', { servingG: exactly(100), printed: wet }).model.columns[2]!.hi).toBeCloseTo(23, 9);
});

it('[RCP-3] order: the first less the second is nothing or more, over all that is in them', () => {
  const facts = { servingG: exactly(100), printed: wet };
  expect(rowOf('Water, sugar', facts, ({ kind }) => kind === 'order')).toEqual({ grams: [1, -1], waterLeft: 0, ends: [0, most] });
  expect(rowOf('Blend (water, sugar), salt', facts, meaning => meaning.kind === 'order' && meaning.second === 'salt')).toEqual({
    grams: [1, 1, -1],
    waterLeft: 0,
    ends: [0, most],
  });
});

it('[RCP-4] a threshold is a share of all that went in; breaking it by all of it costs one', () => {
  const facts = { servingG: exactly(50), printed: wet };
  const row = rowOf('Water, sugar, contains 2% or less of salt', facts, ({ kind }) => kind === 'threshold');
  expect(row).toEqual({ grams: [-0.02, -0.02, 0.98], waterLeft: 0, ends: [least, 0], excess: -1, cost: 1 });
});

it('[RCP-4] a printed percentage holds to a tenth of itself, above by half a percent more', () => {
  const facts = { servingG: exactly(100), printed: wet };
  const { model, meanings, excess } = modelOf('Water (60%), sugar', facts);
  const rows = meanings.flatMap(({ kind }, at) => (kind === 'declared' ? [{ ...model.rows[at]!, cost: excess.get(at)!.cost }] : []));
  expect(rows.map(({ lo, hi }) => [lo, hi])).toEqual([
    [least, 0],
    [0, most],
  ]);
  // 60 % of what went in: at most 66.5, at least 54.
  expect(rows.map(({ terms }) => terms.map(({ coefficient }) => Math.round(coefficient * 1e9) / 1e9))).toEqual([
    [0.335, -0.665, -1],
    [0.46, -0.54, 1],
  ]);
  expect(rows.map(({ cost }) => 1 / cost)).toEqual([expect.closeTo(66.5, 9), expect.closeTo(54, 9)]);
});

it('[RCP-5] a ceiling is a share of the finished food, without the water that left', () => {
  const facts = { servingG: exactly(100), printed: wet };
  const ceiling = (statement: string, name: string) =>
    rowOf(statement, facts, meaning => meaning.kind === 'ceiling' && meaning.name === name);
  // A drink: 0.35 %, calcium phosphates four times that.
  expect(ceiling('Water, sugar, disodium phosphate', 'phosphate additives')).toEqual({
    grams: [-0.0035, -0.0035, 0.9965],
    waterLeft: 0.0035,
    ends: [least, 0],
  });
  expect(ceiling('Water, sugar, tricalcium phosphate', 'calcium phosphates').grams).toEqual([-0.014, -0.014, 0.986]);
  // Each additive has its own beside them: sorbate 0.3 %.
  expect(ceiling('Water, sugar, potassium sorbate', 'potassium sorbate')).toEqual({
    grams: [-0.003, -0.003, 0.997],
    waterLeft: 0.003,
    ends: [least, 0],
  });
});

it('[RCP-5] in a meal the meat carries sodium and potassium phosphates: half a percent of at most 1.4 times its mass', () => {
  const facts = { servingG: exactly(100), printed: wet };
  const inMeat = (meaning: RowMeaning) => meaning.kind === 'ceiling' && meaning.name === 'phosphates in meat';
  expect(rowOf('Rice, turkey, sodium tripolyphosphate', facts, inMeat)).toEqual({
    grams: [0, -0.007, 1],
    waterLeft: 0,
    ends: [least, 0],
  });
  for (const statement of [
    'Rice, sodium tripolyphosphate',
    'Rice, turkey, tricalcium phosphate',
    'Rice, turkey, salt',
    'Rice, turkey, cheddar cheese, sodium tripolyphosphate',
  ])
    expect(modelOf(statement, facts).meanings.some(inMeat), statement).toBe(false);
  expect(modelOf('Rice, turkey, milk, sodium tripolyphosphate', facts).meanings.some(inMeat)).toBe(true);
});

it('[RCP-7] breaking a printed figure by its own size costs one; a small one counts as a two hundredth of the serving', () => {
  const cost = (range: { lo: number; hi: number }) =>
    rowOf('Milk, sugar', { servingG: exactly(100), printed: { fatG: range } }, ({ kind }) => kind === 'printed').cost!;
  expect(1 / cost({ lo: 8, hi: 8 })).toBeCloseTo(8, 9);
  expect(1 / cost({ lo: 7, hi: 9 })).toBeCloseTo(8, 9);
  expect(1 / cost({ lo: 0, hi: 0 })).toBeCloseTo(0.5, 9);
  // An open or very wide end counts as twice the other and one.
  expect(1 / cost({ lo: 2, hi: most })).toBeCloseTo(3.5, 9);
  expect(1 / cost({ lo: 2, hi: 50 })).toBeCloseTo(3.5, 9);
});

it('[RCP-7] an open end is no row, and neither is a lower end of nothing', () => {
  const sides = (range: { lo: number; hi: number }) =>
    modelOf('Milk, sugar', { servingG: exactly(100), printed: { fatG: range } }).meanings.flatMap(meaning =>
      meaning.kind === 'printed' ? [meaning.side] : [],
    );
  expect(sides({ lo: 2, hi: most })).toEqual(['least']);
  expect(sides({ lo: 0, hi: 1 })).toEqual(['most']);
  expect(sides({ lo: 0, hi: most })).toEqual([]);
});

it('[RCP-6] the ties of milk: protein, phosphorus of protein, carbohydrate and potassium of carbohydrate, two rows each', () => {
  const facts = { servingG: exactly(100), printed: wet };
  const { model, meanings, tree, least: leastOf, most: mostOf } = modelOf('Milk', facts);
  const { per1G, perProtein, potassiumPerCarbohydrate } = tree.leaves[0]!.content;
  const names = model.columns.map(({ name }) => name);
  const [protein, phosphorus, carbohydrate, potassium] = ['protein', 'phosphorusMg', 'carbohydrate', 'potassiumMg'].map(kind =>
    names.indexOf(`${kind} of Milk`),
  );
  const ties = meanings.flatMap(({ kind }, at) => (kind === 'tie' ? [model.rows[at]!] : []));
  const between = (of: number, per: number, { lo, hi }: { lo: number; hi: number }) => [
    { of, per, by: -lo, ends: [0, most] },
    { of, per, by: -hi, ends: [least, 0] },
  ];
  expect(ties.map(({ terms: [one, other], lo, hi }) => ({ of: one!.at, per: other!.at, by: other!.coefficient, ends: [lo, hi] }))).toEqual([
    ...between(protein!, 0, per1G.proteinG),
    ...between(phosphorus!, 0, per1G.phosphorusMg),
    ...between(phosphorus!, protein!, perProtein!.phosphorusMg!),
    ...between(carbohydrate!, 0, per1G.carbohydrateG),
    ...between(potassium!, 0, per1G.potassiumMg),
    ...between(potassium!, carbohydrate!, potassiumPerCarbohydrate!),
  ]);
  expect(ties.every(({ terms }) => terms.length === 2 && terms[0]!.coefficient === 1)).toBe(true);
  expect([leastOf('phosphorusMg'), mostOf('potassiumMg'), leastOf('fatG'), mostOf('fatG')]).toEqual([
    [{ at: phosphorus, coefficient: 1 }],
    [{ at: potassium, coefficient: 1 }],
    [{ at: 0, coefficient: per1G.fatG.lo }],
    [{ at: 0, coefficient: per1G.fatG.hi }],
  ]);
  expect([mostOf('carbohydrateG'), leastOf('proteinG')]).toEqual([
    [{ at: carbohydrate, coefficient: 1 }],
    [{ at: protein, coefficient: 1 }],
  ]);
  expect(leastOf('phosphorusMg', () => false)).toEqual([]);
});
