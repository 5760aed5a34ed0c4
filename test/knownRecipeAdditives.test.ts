import { describe, expect, it } from 'vitest';
import { additiveTable } from '#core/additive/additiveTable.ts';
import { partsOf, type Recipe } from '#data/packages/recipe.ts';
import { type Kind, kinds, knownRecipes } from '../bench/knownRecipes/knownRecipes.ts';

describe('[KNO-4] additives stay under what the law or the trade allows', () => {
  const shareOf = (recipe: Recipe, of: (id: string) => boolean) =>
    (100 / recipe.yieldG) *
    recipe.items
      .flatMap(partsOf)
      .filter(({ ingredient: { source } }) => source.kind === 'additive' && of(source.id))
      .reduce((sum, { grams }) => sum + grams, 0);
  const rowOf = (id: string) => additiveTable.find(row => row.id === id)!;
  const isPhosphate = (id: string) => rowOf(id).phosphate === 'inorganic';
  const most = (kindsOf: readonly Kind[], of: (id: string) => boolean) =>
    Math.max(...knownRecipes.filter(({ kind }) => kindsOf.includes(kind)).map(recipe => shareOf(recipe, of)));
  const meats = ['deli meat or sausage', 'injected poultry or fish'] as const;

  // 9 CFR 424.21(c): phosphates 0.5 % of the product, nitrite 200 ppm, lactates 4.8 %, diacetate 0.25 %, erythorbate 7/8 oz to 100 lb (547 ppm).
  // 21 CFR 133.169: emulsifying salts of process cheese together 3 %. 21 CFR 172.135: calcium disodium EDTA, highest of the foods used here 365 ppm (legumes, all beans but green ones).
  // 21 CFR 184.1733: sodium benzoate 0.1 %. Phosphoric acid in drinks: Regulation (EC) 1333/2008, 700 mg/kg as P2O5 = 0.097 % (from memory).
  it.each<[string, readonly Kind[], (id: string) => boolean, number]>([
    ['phosphates in meat and fish', meats, isPhosphate, 0.5],
    ['nitrite', kinds, id => id === 'sodium-nitrite', 0.02],
    ['lactates', kinds, id => id.endsWith('m-lactate') && !id.startsWith('calcium'), 4.8],
    ['diacetate', kinds, id => id === 'sodium-diacetate', 0.25],
    ['erythorbate', kinds, id => id === 'sodium-erythorbate', 0.0547],
    [
      'emulsifying salts of process cheese',
      ['processed cheese'],
      id => (isPhosphate(id) && id !== 'tricalcium-phosphate') || id.endsWith('-citrate'),
      3,
    ],
    ['calcium disodium EDTA', kinds, id => id === 'calcium-disodium-edta', 0.0365],
    ['benzoates', kinds, id => id.endsWith('-benzoate'), 0.1],
    ['phosphoric acid', kinds, id => id === 'phosphoric-acid', 0.097],
  ])('%s', (_, kindsOf, of, ceiling) => {
    expect(most(kindsOf, of)).toBeGreaterThan(0);
    expect(most(kindsOf, of)).toBeLessThanOrEqual(ceiling);
  });

  it('soda and acid together are at most 4.5 parts to 100 of flour, 21 CFR 137.180', () => {
    const leaveners = new Set([
      'sodium-bicarbonate',
      'monocalcium-phosphate',
      'sodium-acid-pyrophosphate',
      'sodium-aluminum-phosphate',
      'calcium-acid-pyrophosphate',
    ]);
    for (const recipe of knownRecipes.filter(({ kind }) => ['bread', 'cracker or cookie', 'baking mix or pudding'].includes(kind))) {
      const flourG = recipe.items
        .flatMap(partsOf)
        .reduce((sum, { grams, words }) => sum + (/flour|corn meal|oats|wheat/.test(words) ? grams : 0), 0);
      const leavenerG = recipe.items
        .flatMap(partsOf)
        .reduce((sum, { grams, ingredient: { source } }) => sum + (source.kind === 'additive' && leaveners.has(source.id) ? grams : 0), 0);
      if (leavenerG > 0) expect((100 * leavenerG) / flourG, recipe.id).toBeLessThanOrEqual(4.5);
    }
  });

  it('outside process cheese, whose law is above, no additive is in use at more than five times what the additive table calls typical; in dry mixes, which are made up with milk or water, at more than eight times', () => {
    // The typical use of data/additives.json is from memory.
    for (const recipe of knownRecipes.filter(({ kind }) => kind !== 'processed cheese'))
      for (const id of new Set(
        recipe.items
          .flatMap(partsOf)
          .flatMap(({ ingredient: { source } }) => (source.kind === 'additive' && source.id !== 'salt' ? [source.id] : [])),
      )) {
        const typical = rowOf(id).typicalPercentFromMemory;
        if (typical !== null)
          expect(shareOf(recipe, one => one === id) / typical, `${recipe.id}: ${id}`).toBeLessThanOrEqual(
            recipe.kind === 'baking mix or pudding' ? 8 : 5,
          );
      }
  });
});
