import { describe, expect, it } from 'vitest';
import { ceilingOf, type FoodKind, foodKind, isPhosphate, phosphateCeilings, typicalPhosphates } from './foodKind.ts';
import { treeOf } from './recipeFixture.ts';

describe('foodKind', () => {
  it.each([
    ['Turkey breast, water, salt, sodium phosphates', 0.25, 'meat'],
    ['Cheddar cheese (milk, cheese cultures, salt, enzymes), water, sodium phosphate', 0.5, 'processed cheese'],
    ['Cheddar cheese (milk, cheese cultures, salt, enzymes), water', 0.5, 'other'],
    ['Carbonated water, sugar, phosphoric acid', 0.11, 'drink'],
    ['Water, tomatoes, salt', 0.11, 'other'],
    ['Wheat flour, water, yeast, salt', 0.6, 'baked'],
    ['Wheat flour, sugar, leavening (baking soda, sodium acid pyrophosphate)', 0.9, 'dry mix'],
    ['Sugar, modified food starch, disodium phosphate', 0.95, 'dry mix'],
    ['Potatoes, sodium acid pyrophosphate', 0.25, 'other'],
    ['Cod, water', 0.2, 'meat'],
    ['Water, pork, salt', 0.1, 'meat'],
    ['Sugar, turkey, salt', 0.3, 'other'],
    ['Ham, cheddar cheese, sodium phosphate', 0.4, 'meat'],
    // Cheese counts as one of the first two foods, and not on dough.
    ['Milk, cheddar cheese, sodium phosphates', 0.4, 'processed cheese'],
    ['Sugar, milk, cheddar cheese, sodium phosphates', 0.4, 'other'],
    ['Macaroni, cheddar cheese, sodium phosphates', 0.3, 'other'],
    // A fifth of it dry is no drink any more, and what has something solid among the first three is none.
    ['Water, sugar', 0.19, 'drink'],
    ['Water, sugar', 0.2, 'other'],
    ['Sugar, water', 0.1, 'other'],
    ['Water, sugar, lemon juice, tomatoes', 0.1, 'other'],
    ['Water, lentils', 0.1, 'other'],
    ['Water, rice', 0.1, 'other'],
    ['Wheat flour, sugar', 0.4, 'other'],
    ['Wheat flour, sugar', 0.41, 'baked'],
    ['Wheat flour, sugar', 0.84, 'baked'],
    ['Wheat flour, sugar', 0.85, 'dry mix'],
    ['Wheat flour, eggs', 0.9, 'baked'],
    ['Almond meal, sugar', 0.6, 'baked'],
    ['Bread, butter', 0.6, 'baked'],
    ['Sugar, cocoa, wheat flour, water', 0.8, 'other'],
    ['Sugar, cocoa', 0.85, 'other'],
    ['Sugar, cocoa', 0.86, 'dry mix'],
  ] as const)('[RCP-5] %s, dry share %d, is %s', (statement, dryShare, kind) => {
    expect(foodKind(treeOf(statement), dryShare)).toBe(kind);
  });

  it('[RCP-5] ceilings of the law: 0.5 % in meat (9 CFR 424.21(c)), 3 % in processed cheese (21 CFR 133.169(c))', () => {
    expect([phosphateCeilings.meat.grams, phosphateCeilings['processed cheese'].grams]).toEqual([0.5, 3]);
  });

  it('[RCP-5] what is typical of a kind of food is below its ceiling', () => {
    for (const [kind, { grams, deviation }] of Object.entries(typicalPhosphates)) {
      expect(grams, kind).toBeLessThan(phosphateCeilings[kind as FoodKind].grams);
      expect(deviation, kind).toBeLessThanOrEqual(1.2 * grams);
    }
  });

  it('[RCP-8] a drier food never has a lower ceiling, so that a missing figure gives the highest', () => {
    for (const statement of ['Water, sugar, sodium phosphate', 'Wheat flour, water, sodium phosphate', 'Corn meal, sodium phosphate']) {
      const ceilings = [0.05, 0.15, 0.3, 0.5, 0.8, 0.9, 1].map(dry => phosphateCeilings[foodKind(treeOf(statement), dry)].grams);
      expect(ceilings, statement).toEqual(ceilings.toSorted((a, b) => a - b));
    }
  });

  it.each([
    ['disodium phosphate', true],
    ['baking powder', true],
    ['soy lecithin', false],
    ['ferric orthophosphate', false],
    ['salt', false],
    ['sugar', false],
  ])('[RCP-5] whether %s counts under the ceiling of phosphates: %s', (name, counts) => {
    expect(isPhosphate(treeOf(`Water, ${name}`).leaves[1]!)).toBe(counts);
  });
});

describe('ceilingOf', () => {
  const gramsOf = (name: string, kind: FoodKind): number | undefined => ceilingOf(treeOf(`Water, ${name}`).leaves[1]!, kind)?.grams;

  it.each([
    // 9 CFR 424.21(c): lactates 4.8 % of the formulation of meat.
    ['potassium lactate', 'meat', 4.8],
    // 21 CFR 133.169, 182.3640, 184.1733: preservatives 0.1 to 0.3 %.
    ['potassium sorbate', 'other', 0.3],
    ['sodium benzoate', 'drink', 0.3],
    ['sodium nitrite', 'meat', 0.3],
    ['potassium bromate', 'baked', 0.3],
    // Twice the 700 mg of P2O5 in a kilogram: 97.994 of 70.972 g/mol are the acid, 0.193 g in 100 g.
    ['phosphoric acid', 'drink', 0.2],
    ['disodium phosphate', 'drink', 0.25],
    ['disodium phosphate', 'other', undefined],
    ['tricalcium phosphate', 'drink', undefined],
    ['salt', 'other', undefined],
    ['sugar', 'other', undefined],
    ['zantle', 'other', undefined],
    ['soy lecithin', 'other', 1],
    ['spices', 'other', 4],
    ['spices', 'dry mix', 15],
    ['natural flavor', 'other', 3],
    ['natural flavor', 'dry mix', 6],
    ['citric acid', 'other', 3],
    ['cheese cultures', 'other', 1],
    ['cheese cultures', 'dry mix', 1],
  ] as const)('[RCP-5] %s in a food of the kind %s: at most %s g in 100 g', (name, kind, grams) => {
    expect(gramsOf(name, kind)).toBe(grams);
  });

  it('[RCP-5] any other additive: six times what is typical, half as much again in a dry mix, never under 0.05 g', () => {
    const leaf = (name: string) => treeOf(`Water, ${name}`).leaves[1]!;
    expect(leaf('sodium citrate').additive!.typicalPercentFromMemory).toBe(0.3);
    expect(gramsOf('sodium citrate', 'other')).toBeCloseTo(1.8, 9);
    expect(gramsOf('sodium citrate', 'dry mix')).toBeCloseTo(2.7, 9);
    expect(gramsOf('potassium lactate', 'other')).toBeCloseTo(12, 9);
    const rare = { ...leaf('sodium citrate').additive!, typicalPercentFromMemory: 0.001 };
    expect(ceilingOf({ ...leaf('sodium citrate'), additive: rare }, 'other')!.grams).toBe(0.05);
    const open = { ...rare, typicalPercentFromMemory: null };
    expect(ceilingOf({ ...leaf('sodium citrate'), additive: open }, 'other')!.grams).toBe(3);
  });
});
