import { describe, expect, it } from 'vitest';
import { nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { labelHeading } from './labelHeadings.ts';

describe('labelHeading', () => {
  // The three spellings are those of docs/formats.md.
  it.each(['sodiumMg', 'sodium_mg', 'Sodium (mg)', 'SODIUM-MG', ' sodium mg ', 'Sodium'])('[CSV-20] %s is sodiumMg', heading => {
    expect(labelHeading(heading)).toEqual({ kind: 'panel', key: 'sodiumMg' });
  });

  it.each(nutrientKeys)('[CSV-20] %s is known by its key and by its printed name, with and without the unit', key => {
    const { printedName, unit } = nutrients[key];
    for (const heading of [key, printedName, `${printedName} (${unit})`]) expect(labelHeading(heading)).toEqual({ kind: 'panel', key });
  });

  // Names as US panels and shop sheets print them: common practice, no source.
  it.each([
    ['Calories', 'energyKcal'],
    ['Total Fat', 'fatG'],
    ['Total Carb.', 'carbohydrateG'],
    ['Vitamin D (µg)', 'vitaminDMcg'],
    ['Ingredients', 'statement'],
    ['UPC', 'gtin'],
    ['Brand', 'maker'],
    ['Serving size', 'servingHousehold'],
    ['Serving size (g)', 'servingGrams'],
    ['Salt (g)', 'saltG'],
    ['Energy (kJ)', 'energyKj'],
    ['Sodium (g)', undefined],
    ['constructor', undefined],
    ['', undefined],
  ])('[CSV-21] "%s" is %s', (heading, key) => {
    expect(labelHeading(heading)?.key).toBe(key);
  });
});
