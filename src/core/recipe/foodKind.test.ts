import { describe, expect, it } from 'vitest';
import { foodKind, phosphateCeilings } from './foodKind.ts';
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
  ] as const)('[RCP-5] %s, dry share %d, is %s', (statement, dryShare, kind) => {
    expect(foodKind(treeOf(statement), dryShare)).toBe(kind);
  });

  it('[RCP-5] ceilings of the law: 0.5 % in meat (9 CFR 424.21(c)), 3 % in processed cheese (21 CFR 133.169(c))', () => {
    expect([phosphateCeilings.meat.grams, phosphateCeilings['processed cheese'].grams]).toEqual([0.5, 3]);
  });

  it('[RCP-8] a drier food never has a lower ceiling, so that a missing figure gives the highest', () => {
    for (const statement of ['Water, sugar, sodium phosphate', 'Wheat flour, water, sodium phosphate', 'Corn meal, sodium phosphate']) {
      const ceilings = [0.05, 0.15, 0.3, 0.5, 0.8, 0.9, 1].map(dry => phosphateCeilings[foodKind(treeOf(statement), dry)].grams);
      expect(ceilings, statement).toEqual(ceilings.toSorted((a, b) => a - b));
    }
  });
});
