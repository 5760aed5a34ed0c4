import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import type { Ingredient } from '#core/statement/statement.ts';
import { referenceFoodsJson } from '../../../data/reference/build.ts';
import { hasOpenData, openDataFolder, realStatements } from '../../../test/openData.ts';
import { matchFood } from './matchFood.ts';
import { type ReferenceNutrient, referenceFood, referenceTable } from './referenceFood.ts';

const sr28 = join(openDataFolder, 'usda-sr28.csv');
const sr28Text = existsSync(sr28) ? readFileSync(sr28, 'utf8') : undefined;
const rows = new Map(
  Papa.parse<Record<string, string>>((sr28Text ?? '').replace(/^\ufeff/u, ''), { header: true }).data.map(row => [row.NDB_No!, row]),
);

/** NDB number, food, figure and column: rows that anybody can look up in SR28. */
const wellKnown = [
  ['01077', 'whole-milk', 'phosphorusMg', 'Phosphorus_(mg)', 84],
  ['01123', 'whole-egg', 'phosphorusMg', 'Phosphorus_(mg)', 198],
  ['02047', 'salt', 'sodiumMg', 'Sodium_(mg)', 38758],
  ['11546', 'tomato-paste', 'potassiumMg', 'Potassium_(mg)', 1014],
  ['20481', 'wheat-flour', 'phosphorusMg', 'Phosphorus_(mg)', 108],
  ['04044', 'soybean-oil', 'fatG', 'Lipid_Tot_(g)', 100],
] as const;

test.skipIf(sr28Text === undefined).each(wellKnown)('[REF-1] SR28 row %s gives %s its %s', (ndb, id, key, column, value) => {
  expect(Number(rows.get(ndb)![column])).toBe(value);
  expect(referenceFood(id)!.ndb[0]).toBe(ndb);
  expect(referenceFood(id)!.per100G[key]).toBe(value);
});

test.skipIf(sr28Text === undefined)('[REF-1] the table is what the selection and SR28 give', () => {
  const selection = readFileSync(new URL('../../../data/reference/foods.csv', import.meta.url), 'utf8');
  const table = readFileSync(new URL('../../../data/referenceFoods.json', import.meta.url), 'utf8');
  expect(referenceFoodsJson(selection, sr28Text!) === table, 'run `npm run reference`').toBe(true);
});

test.skipIf(sr28Text === undefined)('[REF-2] a figure that SR28 leaves empty is unknown, and no other without a note', () => {
  const columns: Partial<Record<ReferenceNutrient, string>> = {
    saturatedFatG: 'FA_Sat_(g)',
    totalSugarsG: 'Sugar_Tot_(g)',
    potassiumMg: 'Potassium_(mg)',
    phosphorusMg: 'Phosphorus_(mg)',
  };
  let empty = 0;
  for (const food of referenceTable.foods)
    for (const [key, column] of Object.entries(columns)) {
      const figure = food.per100G[key as ReferenceNutrient];
      const field = rows.get(food.ndb[0]!)![column];
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

test.skipIf(!hasOpenData)('[REF-11] 85 of 100 first ingredients of real statements have a food', () => {
  let all = 0;
  let matched = 0;
  for (const text of realStatements())
    for (const [at, [name, heading]] of parseStatement(text)
      .value.ingredients.flatMap(each => leavesOf(each))
      .slice(0, 5)
      .entries()) {
      all += 1 / 2 ** at;
      if (matchFood(name, heading) !== undefined) matched += 1 / 2 ** at;
    }
  expect(matched / all).toBeGreaterThan(0.85);
});

function leavesOf({ name, parts }: Ingredient, heading = ''): [string, string][] {
  return parts.length === 0 ? [[name, heading]] : parts.flatMap(part => leavesOf(part, name));
}
