import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { referenceFoodsJson } from '../../../data/reference/build.ts';
import { keptFromPublished, usedNumbers } from '../../../data/reference/keepSr28.ts';
import { keptSr28 } from '../../../data/reference/sr28.ts';
import { hasSr28, sr28File } from '../../../test/openData.ts';
import { type ReferenceNutrient, referenceFood, referenceTable } from './referenceFood.ts';

const data = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');

/** NDB number, food and figure: rows that anybody can look up in SR28. */
const wellKnown = [
  ['01077', 'whole-milk', 'phosphorusMg', 84],
  ['01123', 'whole-egg', 'phosphorusMg', 198],
  ['02047', 'salt', 'sodiumMg', 38758],
  ['11546', 'tomato-paste', 'potassiumMg', 1014],
  ['20481', 'wheat-flour', 'phosphorusMg', 108],
  ['04044', 'soybean-oil', 'fatG', 100],
] as const;

test.each(wellKnown)('[REF-1] SR28 row %s gives %s its %s', (ndb, id, key, value) => {
  expect(Number(keptSr28.get(ndb)![key])).toBe(value);
  expect(referenceFood(id)!.ndb[0]).toBe(ndb);
  expect(referenceFood(id)!.per100G[key]).toBe(value);
});

test('[REF-1] the table is what the selection and the kept rows of SR28 give', () => {
  expect(referenceFoodsJson(data('reference/foods.csv')) === data('referenceFoods.json'), 'run `npm run reference`').toBe(true);
});

test('[REF-18] the rows that are used are kept, and no others', () => {
  expect([...keptSr28.keys()]).toEqual(usedNumbers());
});

test.skipIf(!hasSr28)(`[REF-18] the kept rows are those of SR28 (skipped where there is no ${sr28File})`, () => {
  expect(keptFromPublished(readFileSync(sr28File, 'utf8')) === data('reference/sr28.csv'), 'run `npm run reference`').toBe(true);
});

test('[REF-2] a figure that SR28 leaves empty is unknown, and no other without a note', () => {
  const nutrients = ['saturatedFatG', 'totalSugarsG', 'potassiumMg', 'phosphorusMg'] as const;
  let empty = 0;
  for (const food of referenceTable.foods)
    for (const key of nutrients) {
      const figure = food.per100G[key];
      const field = keptSr28.get(food.ndb[0]!)![key];
      if (field === '') empty++;
      if (field === '') expect(figure, `${food.id} ${key}`).toBeNull();
      else if (food.note === undefined) expect(figure, `${food.id} ${key}`).toBe(Number(field));
    }
  expect(empty).toBeGreaterThan(20);
});

/** 86 proof is 43 % by volume (27 CFR 5.1); with 0.789 g of alcohol per mL and 0.943 g of spirit (from memory) 36 g in 100 g. */
test('[REF-3] whiskey of 86 proof holds 36 g of alcohol in 100 g, bread none', () => {
  expect(referenceFood('whiskey')!.per100G.alcoholG).toBeCloseTo((43 * 0.789) / 0.943, 0);
  expect(referenceFood('bread')!.per100G.alcoholG).toBe(0);
});

test('[REF-1] figures stay within 100 g and within the spread of their rows', () => {
  for (const { id, per100G, spread } of referenceTable.foods) {
    const { waterG, proteinG, fatG, carbohydrateG, alcoholG } = per100G;
    const sum = [waterG, proteinG, fatG, carbohydrateG, alcoholG].reduce<number>((total, part) => total + (part ?? 0), 0);
    // Water, protein, fat and ash are analyzed, so that a sum may pass 100 g a little.
    expect(sum, id).toBeLessThan(101);
    for (const [key, range] of Object.entries(spread)) {
      const figure = per100G[key as ReferenceNutrient];
      if (figure === null) continue;
      expect(figure, `${id} ${key}`).toBeGreaterThanOrEqual(range[0]);
      expect(figure, `${id} ${key}`).toBeLessThanOrEqual(range[1]);
    }
  }
});
