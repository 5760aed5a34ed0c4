import { describe, expect, it } from 'vitest';
import { largerReference } from '#core/reference/largerReference.ts';
import { nothingKnown } from '#core/reference/largerTable.ts';
import { referenceContent } from './content.ts';
import { treeOf } from './recipeFixture.ts';

const leavesOf = (text: string) => treeOf(text).leaves.map(({ name, taken }) => `${name}: ${taken}`);

describe('recipeTree', () => {
  it('[RCP-1] a compound that the table knows is one leaf', () => {
    expect(leavesOf('Enriched flour (wheat flour, niacin, reduced iron), cheddar cheese (milk, cheese cultures, salt, enzymes)')).toEqual([
      'Enriched flour: reference',
      'cheddar cheese: reference',
    ]);
  });

  it('[RCP-1] one with a phosphate inside is its parts, and so is one that the table does not know', () => {
    expect(leavesOf('Ham (pork, water, salt, sodium phosphates)')).toEqual([
      'pork: reference',
      'water: reference',
      'salt: additive',
      'sodium phosphates: additive',
    ]);
    expect(leavesOf('Zantle paste (tomatoes, sugar)')).toEqual(['tomatoes: reference', 'sugar: reference']);
  });

  it('[RCP-1] bread and sweets hold their usual leavening already and stay whole', () => {
    expect(leavesOf('Bread (wheat flour, water, monocalcium phosphate), water')).toEqual(['Bread: reference', 'water: reference']);
  });

  it('[REF-13] an imported table is asked for names without parts, and its figures get the wider spread', () => {
    // SR28 11241: 46 mg of phosphorus, 350 mg of potassium in 100 g.
    const kohlrabi = { ...nothingKnown, phosphorusMg: 46, potassiumMg: 350, proteinG: 1.7, carbohydrateG: 6.2, waterG: 91 };
    const foods = [{ number: '11241', description: 'Kohlrabi, raw', group: '1100', per100G: kohlrabi, household: [] }];
    const larger = largerReference([{ dataset: 'usda-sr', source: 'test', edition: 'release 28', foods }]);
    expect(treeOf('Kohlrabi, water').leaves[0]).toMatchObject({ taken: 'unknown' });
    const [leaf] = treeOf('Kohlrabi, water', larger).leaves;
    expect(leaf).toMatchObject({ taken: 'reference', group: 'vegetable', content: { phosphorusKind: 'plant' } });
    const named = referenceContent(larger.find(['kohlrabi'])!.food).per1G.phosphorusMg;
    const { lo, mid, hi } = leaf!.content.per1G.phosphorusMg;
    expect(mid).toBeCloseTo(0.46, 9);
    expect(hi - lo).toBeGreaterThan(named.hi - named.lo);
    expect(treeOf('Kohlrabi (turnips, salt)', larger).leaves.map(({ name }) => name)).toEqual(['turnips', 'salt']);
  });

  it('[RCP-1] headings weigh what their parts weigh', () => {
    const { leaves, nodes } = treeOf('Sugar, leavening (baking soda, monocalcium phosphate)');
    expect(leaves.map(({ name }) => name)).toEqual(['Sugar', 'baking soda', 'monocalcium phosphate']);
    expect(nodes.map(node => node.leaves)).toEqual([[0], [1, 2]]);
    const [crust, filling] = treeOf('Crust: flour, water. Filling: apples, sugar.').nodes;
    expect([crust?.isComponent, crust?.leaves, filling?.isComponent, filling?.leaves]).toEqual([true, [0, 1], true, [2, 3]]);
  });

  it('[RCP-1] what the label leaves open is open, the whole of it is not', () => {
    const [, oils] = treeOf('Water, soybean and/or canola oil, salt').nodes;
    expect([oils?.isOpen, oils?.parts.map(({ isOpen }) => isOpen)]).toEqual([false, [true, true]]);
  });

  it('[RCP-2] an ingredient is taken for an additive, a food, a salt, a trifle, or is unknown', () => {
    expect(leavesOf('Water, zantle frobs, natural flavor, spices, citric acid, calcium carbonate, dipotassium phosphate')).toEqual([
      'Water: reference',
      'zantle frobs: unknown',
      'natural flavor: trifle',
      'spices: reference',
      'citric acid: salt',
      'calcium carbonate: salt',
      'dipotassium phosphate: additive',
    ]);
  });

  it('[RCP-2] what nobody knows spans what any food may hold', () => {
    const { phosphorusMg, potassiumMg } = treeOf('Zantle frobs').leaves[0]!.content.per1G;
    // USDA SR28, mg per 100 g: wheat bran 20077 phosphorus 1013; instant coffee 14214 potassium 3535. Both within, neither at the end.
    expect([phosphorusMg.lo, potassiumMg.lo]).toEqual([0, 0]);
    expect(phosphorusMg.hi).toBeGreaterThan(10.13);
    expect(potassiumMg.hi).toBeGreaterThan(35.35);
  });

  it('[RCP-2] an additive holds what its formula holds: disodium phosphate and its hydrates (IUPAC 2021 atomic weights)', () => {
    const { phosphorusMg, sodiumMg } = treeOf('Water, disodium phosphate').leaves[1]!.content.per1G;
    // Na2HPO4 141.957 g/mol: 30.974 of phosphorus, 45.980 of sodium; the dodecahydrate has 358.14 g/mol.
    expect(phosphorusMg.hi).toBeCloseTo(1000 * (30.974 / 141.957), 0);
    expect(phosphorusMg.lo).toBeCloseTo(1000 * (30.974 / 358.14), 0);
    expect(sodiumMg.hi).toBeCloseTo(1000 * (45.98 / 141.957), 0);
    expect(sodiumMg.lo).toBeCloseTo(1000 * (45.98 / 358.14), 0);
  });

  it.each([
    ['filtered water', 'reference', 'water'],
    ['reverse osmosis water', 'reference', 'water'],
    ['watermelon', 'reference', 'fruit'],
    ['herbs', 'reference', 'spice'],
    ['vinegar powder', 'salt', 'acid'],
    ['calcium zantle', 'salt', 'salt'],
    ['minerals', 'trifle', 'trifle'],
    ['xanthan gum', 'trifle', 'trifle'],
    ['low fat cheddar cheese', 'reference', 'dairy'],
    ['modified food starch', 'reference', 'starch'],
    ['lite zantle', 'unknown', 'unknown'],
  ])('[RCP-2] "%s" is taken for: %s, %s', (name, taken, group) => {
    expect(treeOf(`Sugar, ${name}`).leaves[1]).toMatchObject({ name, taken, group });
  });

  it('[RCP-2] calcium salts bring up to 40 % calcium, acids none', () => {
    const calcium = (name: string) => treeOf(name).leaves[0]!.content.per1G.calciumMg.hi;
    expect([calcium('calcium zantle'), calcium('citric acid')]).toEqual([400, 0]);
  });

  it('[RCP-2] a kind of a food that is only near it has the wider spread', () => {
    const spread = (name: string) => {
      const { lo, hi } = treeOf(name).leaves[0]!.content.per1G.calciumMg;
      return hi - lo;
    };
    expect(spread('reduced fat cheddar cheese')).toBeGreaterThan(spread('cheddar cheese'));
    expect(spread('grilled eggplant')).toBeGreaterThan(spread('eggplant'));
    expect(spread('golden zucchini')).toBe(spread('zucchini'));
  });

  it('[RCP-2] a name that leaves open which salt it is spans those of its family', () => {
    const phosphorus = (name: string) => treeOf(`Water, ${name}`).leaves[1]!.content.per1G.phosphorusMg;
    expect(phosphorus('monosodium phosphate').lo).toBeGreaterThan(phosphorus('trisodium phosphate').lo);
    expect(phosphorus('sodium phosphates').lo).toBeLessThanOrEqual(phosphorus('trisodium phosphate').lo);
    // Monosodium phosphate has most of it: 30.974 of 119.977 g/mol.
    expect(phosphorus('sodium phosphates').hi).toBeCloseTo(30_974 / 119.977, 1);
  });

  it('[RCP-1] what counts inside makes its parts of a compound: potassium does, salt and preservatives do not', () => {
    expect(leavesOf('Cheddar cheese (milk, potassium chloride)')).toEqual(['milk: reference', 'potassium chloride: additive']);
    expect(leavesOf('Cheddar cheese (milk, salt, potassium sorbate)')).toEqual(['Cheddar cheese: reference']);
    expect(leavesOf('Cheddar cheese (milk, soy lecithin)')).toEqual(['Cheddar cheese: reference']);
    // Its own name is no additive inside it.
    expect(leavesOf('Baking powder (zantle starch, frobs)')).toEqual(['Baking powder: reference']);
    expect(leavesOf('Cream of tartar (zantle, frobs)')).toEqual(['Cream of tartar: reference']);
    expect(leavesOf('Self-rising flour (wheat flour, salt)')).toEqual(['Self-rising flour: reference']);
    expect(leavesOf('Self-rising flour (wheat flour, monocalcium phosphate)')).toEqual([
      'wheat flour: reference',
      'monocalcium phosphate: additive',
    ]);
  });

  it('[RCP-4] a bound and a printed percentage stand on their node', () => {
    const [oats, rest] = treeOf('Oats (60%), contains 2% or less of salt').nodes;
    expect([oats?.declaredPercent, oats?.atMostPercent, rest?.declaredPercent, rest?.atMostPercent]).toEqual([60, undefined, undefined, 2]);
  });
});
