import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { usDeclaredDailyValuePercent, usDeclaredFigure } from '#core/label/figure/declaredFigure.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { nearest } from '#core/quantity/rounding.ts';
import { openDataFolder } from '../../../../test/openData.ts';
import type { PrintedFigure } from '../label.ts';
import { readLabel } from '../readLabel.ts';

const sr28 = join(openDataFolder, 'usda-sr28.csv');

const columns: readonly (readonly [Nutrient, string])[] = [
  ['energyKcal', 'Energ_Kcal'],
  ['fatG', 'Lipid_Tot_(g)'],
  ['saturatedFatG', 'FA_Sat_(g)'],
  ['cholesterolMg', 'Cholestrl_(mg)'],
  ['sodiumMg', 'Sodium_(mg)'],
  ['carbohydrateG', 'Carbohydrt_(g)'],
  ['fiberG', 'Fiber_TD_(g)'],
  ['totalSugarsG', 'Sugar_Tot_(g)'],
  ['proteinG', 'Protein_(g)'],
  ['calciumMg', 'Calcium_(mg)'],
  ['ironMg', 'Iron_(mg)'],
  ['potassiumMg', 'Potassium_(mg)'],
  ['phosphorusMg', 'Phosphorus_(mg)'],
  ['magnesiumMg', 'Magnesium_(mg)'],
];

/**
 * USDA National Nutrient Database for Standard Reference, release 28: real foods, energy by their specific Atwater factors,
 * analyzed parts that need not add up. Declared by the US rules, hardly any may be found odd; those that are (sweetened
 * with something the table does not show, fiber and sugars analyzed above carbohydrate) are odd in the table too.
 */
test.skipIf(!existsSync(sr28))(
  '[LBL-17] real foods of SR28, declared by the US rules, are found odd in fewer than 1 of 250 portions',
  () => {
    const { data } = Papa.parse<Record<string, string>>(readFileSync(sr28, 'utf8').replace(/^\ufeff/u, ''), {
      header: true,
      skipEmptyLines: true,
    });
    let portions = 0;
    let odd = 0;
    for (const row of data) {
      for (const grams of [100, Number(row.GmWt_1)]) {
        if (!(grams >= 0.5)) continue;
        portions++;
        if (foundOdd(row, grams)) odd++;
      }
    }
    expect(portions).toBeGreaterThan(15_000);
    expect(odd / portions).toBeLessThan(1 / 250);
  },
);

function foundOdd(row: Readonly<Record<string, string>>, grams: number): boolean {
  const panel: Partial<Record<Nutrient, PrintedFigure>> = {};
  for (const [nutrient, column] of columns) {
    const per100G = row[column];
    if (per100G === undefined || per100G === '') continue;
    const amount = (Number(per100G) * grams) / 100;
    const figure = usDeclaredFigure(nutrient, amount);
    const percent = usDeclaredDailyValuePercent(nutrient, amount);
    const words = typeof figure === 'string' ? figure : `${figure} ${nutrients[nutrient].unit}`;
    panel[nutrient] = percent === undefined ? words : `${words} ${percent}%`;
  }
  const { findings, issues } = readLabel({
    market: 'us',
    name: row.Shrt_Desc ?? '',
    serving: { grams: nearest(grams, grams < 2 ? 0.1 : grams < 5 ? 0.5 : 1) },
    basis: 'per-serving',
    state: 'as-packaged',
    front: [],
    otherColumns: [],
    panel,
  });
  expect(issues).toEqual([]);
  return findings.length > 0;
}
