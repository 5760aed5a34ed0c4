import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { usDeclaredDailyValuePercent, usDeclaredFigure } from '#core/label/figure/declaredFigure.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { nearest } from '#core/quantity/rounding.ts';
import { referenceTable } from '#core/reference/referenceFood.ts';
import { type Sr28Row, sr28Rows } from '../../../../data/reference/sr28.ts';
import { hasSr28, sr28File } from '../../../../test/openData.ts';
import type { PrintedFigure } from '../label.ts';
import { readLabel } from '../readLabel.ts';

const declared = [
  'energyKcal',
  'fatG',
  'saturatedFatG',
  'cholesterolMg',
  'sodiumMg',
  'carbohydrateG',
  'fiberG',
  'totalSugarsG',
  'proteinG',
  'calciumMg',
  'ironMg',
  'potassiumMg',
  'phosphorusMg',
  'magnesiumMg',
] as const;

type Figures = Readonly<Record<(typeof declared)[number], number | null>>;

interface Portion {
  readonly name: string;
  readonly per100G: Figures;
  readonly grams: number;
}

/**
 * USDA National Nutrient Database for Standard Reference, release 28: real foods, energy by their specific Atwater factors,
 * analyzed parts that need not add up. Declared by the US rules, hardly any may be found odd; those that are (sweetened
 * with something the table does not show, fiber and sugars analyzed above carbohydrate) are odd in the table too.
 */
test('[LBL-17] the foods of our table, from SR28, declared by the US rules, are found odd in fewer than 1 of 250 portions', () => {
  const portions = referenceTable.foods.flatMap(({ name, per100G, household }) => portionsOf(name, per100G, household[0]?.grams));
  expect(portions.length).toBeGreaterThan(1_500);
  expect(shareOfOdd(portions)).toBeLessThan(1 / 250);
});

test.skipIf(!hasSr28)(`[LBL-17] the same of all foods of SR28 (skipped where there is no ${sr28File})`, () => {
  const portions = sr28Rows(readFileSync(sr28File, 'utf8')).flatMap(row =>
    portionsOf(row.Shrt_Desc ?? '', figuresOf(row), Number(row.measure1G)),
  );
  expect(portions.length).toBeGreaterThan(15_000);
  expect(shareOfOdd(portions)).toBeLessThan(1 / 250);
});

function figuresOf(row: Sr28Row): Figures {
  const entries = declared.map(nutrient => [nutrient, row[nutrient] === '' ? null : Number(row[nutrient])]);
  return Object.fromEntries(entries) as Figures;
}

/** 100 g and the first household measure. */
function portionsOf(name: string, per100G: Figures, measureG = 0): readonly Portion[] {
  return [100, measureG].filter(grams => grams >= 0.5).map(grams => ({ name, per100G, grams }));
}

function shareOfOdd(portions: readonly Portion[]): number {
  return portions.filter(isFoundOdd).length / portions.length;
}

function isFoundOdd({ name, per100G, grams }: Portion): boolean {
  const panel: Partial<Record<Nutrient, PrintedFigure>> = {};
  for (const nutrient of declared) {
    const figure100G = per100G[nutrient];
    if (figure100G === null) continue;
    const amount = (figure100G * grams) / 100;
    const figure = usDeclaredFigure(nutrient, amount);
    const percent = usDeclaredDailyValuePercent(nutrient, amount);
    const words = typeof figure === 'string' ? figure : `${figure} ${nutrients[nutrient].unit}`;
    panel[nutrient] = percent === undefined ? words : `${words} ${percent}%`;
  }
  const { findings, issues } = readLabel({
    market: 'us',
    name,
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
