import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { additiveTable } from '#core/additive/additiveTable.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { amountsPer100G, compositionPer100G, sr28Rows } from '../bench/knownRecipes/composition.ts';
import { knownFoods, knownRecipes, styleAt } from '../bench/knownRecipes/index.ts';
import { statementOrder, statementText } from '../bench/knownRecipes/package.ts';
import { type PantryName, pantry } from '../bench/knownRecipes/pantry.ts';
import { type Group, gramsOf, type Kind, kinds, type Line, partsOf, type Recipe, twoRecipes } from '../bench/knownRecipes/recipe.ts';
import { openDataFolder } from './openData.ts';

const hasSr28 = existsSync(join(openDataFolder, 'usda-sr28.csv'));
if (!hasSr28) console.warn(`no usda-sr28.csv in ${openDataFolder}: the foods of known recipe are not checked`);

const indexed = knownRecipes.map((recipe, index) => ({ id: recipe.id, recipe, style: styleAt(index), index }));
const oneThing = (of: PantryName, yieldG = 100): Recipe => ({
  ...knownRecipes[0]!,
  yieldG,
  items: [{ grams: 100, item: pantry[of], words: of }],
});

describe('the foods of known recipe', () => {
  it('[KNO-1] there are at least 320 of them, 20 or more of each kind, no two under one id', () => {
    expect(knownRecipes.length).toBeGreaterThanOrEqual(320);
    for (const kind of kinds) expect(knownRecipes.filter(recipe => recipe.kind === kind).length, kind).toBeGreaterThanOrEqual(20);
    expect(new Set(knownRecipes.map(({ id }) => id)).size).toBe(knownRecipes.length);
  });

  it.each(indexed)('[KNO-2] $id accounts for 100 g, every part of it above nothing', ({ recipe }) => {
    expect(recipe.items.reduce((sum, item) => sum + gramsOf(item), 0)).toBeCloseTo(100, 6);
    for (const { grams, words } of recipe.items.flatMap(partsOf)) expect(grams, words).toBeGreaterThan(0);
    const words = recipe.items.flatMap(partsOf).map(({ words }) => words);
    expect(words.filter((word, at) => words.indexOf(word) !== at)).toEqual([]);
  });

  it('[KNO-2] the two recipes of one base differ', () => {
    const grams = (recipe: Recipe) => recipe.items.flatMap(partsOf).map(line => `${line.grams} ${line.words}`);
    for (let at = 0; at < knownRecipes.length; at += 2) expect(grams(knownRecipes[at]!)).not.toEqual(grams(knownRecipes[at + 1]!));
  });

  it('[KNO-2] a base that leaves less than nothing for its last item is refused', () => {
    const serving = ['1 piece', 10] as const;
    expect(() => twoRecipes('bread', { id: 'too-much', serving, items: [['sugar', 101], ['water']] })).toThrow(RangeError);
    expect(() => twoRecipes('bread', { id: 'no-rest', serving, items: [['sugar', 100]] })).toThrow(RangeError);
  });
});

describe('the packages of the foods of known recipe', () => {
  it('[KNO-5] half of them have the clause "contains 2% or less of", first and second recipes alike', () => {
    const withClause = indexed.filter(({ recipe, style }) =>
      statementText(recipe, style).toLowerCase().includes('contains 2% or less of:'),
    );
    expect(Math.abs(withClause.length - knownRecipes.length / 2)).toBeLessThanOrEqual(knownRecipes.length / 20);
    const second = withClause.filter(({ id }) => id.endsWith('-second')).length;
    expect(Math.abs(second - withClause.length / 2)).toBeLessThanOrEqual(3);
  });

  it.each(indexed)('[KNO-5] the statement of $id goes down by weight, and small things alone follow the clause', ({ recipe, style }) => {
    const { ordered, afterClause } = statementOrder(recipe, style);
    const weights = ordered.map(gramsOf);
    expect(weights).toEqual([...weights].sort((a, b) => b - a));
    // 21 CFR 101.4(a)(2): what follows the clause is at most so many percent by weight, here both of what goes in and of what comes out.
    for (const item of afterClause) expect(gramsOf(item) / Math.min(1, recipe.yieldG / 100)).toBeLessThanOrEqual(2);
    const text = statementText(recipe, style).toLowerCase();
    let from = 0;
    for (const item of [...ordered, ...afterClause]) {
      const at = text.indexOf(nameOf(item), from);
      expect(at, nameOf(item)).toBeGreaterThanOrEqual(from);
      from = at + 1;
    }
  });

  it.each(indexed)(
    '[KNO-5] the statement of $id is read without a complaint, and every true share lies in its bounds',
    ({ recipe, style }) => {
      const { value, issues } = parseStatement(statementText(recipe, style));
      expect(issues).toEqual([]);
      const items = [...statementOrder(recipe, style).ordered, ...statementOrder(recipe, style).afterClause];
      expect(value.ingredients.map(({ name }) => name.toLowerCase())).toEqual(items.map(nameOf));
      for (const [at, item] of items.entries()) {
        const { lo, hi } = value.ingredients[at]!.sharePercent;
        expect(gramsOf(item), nameOf(item)).toBeGreaterThanOrEqual(lo - 1e-9);
        expect(gramsOf(item), nameOf(item)).toBeLessThanOrEqual(hi + 1e-9);
      }
    },
  );
});

describe('[KNO-4] additives stay under what the law or the trade allows', () => {
  const shareOf = (recipe: Recipe, of: (id: string) => boolean) =>
    (100 / recipe.yieldG) *
    recipe.items
      .flatMap(partsOf)
      .filter(({ item }) => 'additive' in item && of(item.additive))
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
        .reduce((sum, { grams, item }) => sum + ('additive' in item && leaveners.has(item.additive) ? grams : 0), 0);
      if (leavenerG > 0) expect((100 * leavenerG) / flourG, recipe.id).toBeLessThanOrEqual(4.5);
    }
  });

  it('outside process cheese, whose law is above, no additive is in use at more than five times what the additive table calls typical; in dry mixes, which are made up with milk or water, at more than eight times', () => {
    // The typical use of data/additives.json is from memory.
    for (const recipe of knownRecipes.filter(({ kind }) => kind !== 'processed cheese'))
      for (const id of new Set(
        recipe.items.flatMap(partsOf).flatMap(({ item }) => ('additive' in item && item.additive !== 'salt' ? [item.additive] : [])),
      )) {
        const typical = rowOf(id).typicalPercentFromMemory;
        if (typical !== null)
          expect(shareOf(recipe, one => one === id) / typical, `${recipe.id}: ${id}`).toBeLessThanOrEqual(
            recipe.kind === 'baking mix or pudding' ? 8 : 5,
          );
      }
  });
});

describe.skipIf(!hasSr28)('the truth of the foods of known recipe', () => {
  it('[KNO-3] what cooks off is water: the rest is left in fewer grams', () => {
    // SR28 01086, nonfat milk with milk solids: 90.38 g water, 104 mg phosphorus, 171 mg potassium.
    expect(compositionPer100G(oneThing('skimMilk')).phosphorusMg).toBeCloseTo(104, 6);
    const boiledDown = compositionPer100G(oneThing('skimMilk', 50));
    expect(boiledDown.phosphorusMg).toBeCloseTo(208, 6);
    expect(boiledDown.potassiumMg).toBeCloseTo(342, 6);
    expect(boiledDown.waterG).toBeCloseTo(80.76, 2);
    expect(() => compositionPer100G(oneThing('skimMilk', 9))).toThrow(RangeError);
  });

  it('[KNO-3] additives bring what their formulas hold; phosphorus of lecithin is not added phosphorus', () => {
    // Salt 39.34 % sodium, disodium phosphate 21.82 % phosphorus and 32.39 % sodium, potassium chloride 52.45 % potassium: handbook values, from memory.
    expect(compositionPer100G(oneThing('salt')).sodiumMg).toBeCloseTo(39_340, -1);
    const phosphate = compositionPer100G(oneThing('disodiumPhosphate'));
    expect(phosphate.phosphorusMg).toBeCloseTo(21_820, -1);
    expect(phosphate.addedPhosphorusMg).toBe(phosphate.phosphorusMg);
    expect(phosphate.sodiumMg).toBeCloseTo(32_390, -1);
    expect(compositionPer100G(oneThing('potassiumChloride')).addedPotassiumMg).toBeCloseTo(52_450, -1);
    expect(compositionPer100G(oneThing('lecithin')).phosphorusMg).toBeGreaterThan(3000);
    expect(compositionPer100G(oneThing('lecithin')).addedPhosphorusMg).toBe(0);
  });

  it('[KNO-3] every food of the pantry has its figures, and a row without them is refused', () => {
    for (const item of Object.values(pantry)) expect(() => amountsPer100G(item)).not.toThrow();
    const without = sr28Rows().find(row => row['Phosphorus_(mg)'] === '')!;
    expect(() => amountsPer100G({ ndb: without.NDB_No!, words: 'unknown' })).toThrow(/phosphorusMg/);
    expect(() => amountsPer100G({ ndb: '99999', words: 'nothing' })).toThrow(/no row/);
  });

  it('[KNO-3] every item of the pantry is used', () => {
    const used = new Set<unknown>(knownRecipes.flatMap(({ items }) => items.flatMap(partsOf).map(({ item }) => item)));
    expect(
      Object.entries(pantry)
        .filter(([, item]) => !used.has(item))
        .map(([name]) => name),
    ).toEqual([]);
  });

  it.each(indexed)('[KNO-6] $id adds up by weight and holds what its kind holds', ({ recipe }) => {
    const { waterG, proteinG, fatG, carbohydrateG, sodiumMg, phosphorusMg, addedPhosphorusMg, potassiumMg, addedPotassiumMg } =
      compositionPer100G(recipe);
    expect(waterG).toBeGreaterThanOrEqual(0);
    expect(waterG + proteinG + fatG + carbohydrateG).toBeLessThanOrEqual(101);
    expect(waterG + proteinG + fatG + carbohydrateG).toBeGreaterThanOrEqual(90);
    expect(addedPhosphorusMg).toBeLessThanOrEqual(phosphorusMg);
    expect(addedPotassiumMg).toBeLessThanOrEqual(potassiumMg);
    const { protein, sodium } = plausible[recipe.kind];
    expect(proteinG, 'protein').toBeGreaterThanOrEqual(protein[0]);
    expect(proteinG, 'protein').toBeLessThanOrEqual(protein[1]);
    expect(sodiumMg, 'sodium').toBeGreaterThanOrEqual(sodium[0]);
    expect(sodiumMg, 'sodium').toBeLessThanOrEqual(sodium[1]);
  });

  it('[KNO-6] every kind has foods with added phosphate and foods without', () => {
    const foods = knownFoods();
    for (const kind of kinds) {
      const added = foods.filter(food => food.kind === kind).map(({ truth }) => truth.addedPhosphorusMg);
      expect(added.filter(mg => mg > 0).length, kind).toBeGreaterThanOrEqual(3);
      expect(added.filter(mg => mg === 0).length, kind).toBeGreaterThanOrEqual(2);
    }
  });

  it('[KNO-7] the panel is what a label reader takes without a finding, and tells neither phosphorus nor potassium', () => {
    const odd: string[] = [];
    for (const { id, statement, panel, servingG, household } of knownFoods()) {
      const { value, issues } = labelFromJson({ id, name: id, statement, panel, serving: { household, grams: servingG } });
      const { findings, issues: more } = readLabel(value!);
      odd.push(
        ...findings.map(({ code, message }) => `${id}: ${code} ${message}`),
        ...[...issues, ...more].map(({ code }) => `${id}: ${code}`),
      );
      expect(panel).not.toHaveProperty('phosphorusMg');
      expect(panel).not.toHaveProperty('potassiumMg');
      for (const line of [
        'energyKcal',
        'fatG',
        'sodiumMg',
        'carbohydrateG',
        'proteinG',
        'totalSugarsG',
        'calciumMg',
        'ironMg',
        'cholesterolMg',
        'fiberG',
        'saturatedFatG',
      ])
        expect(panel, id).toHaveProperty(line);
    }
    expect(odd).toEqual([]);
  });

  it('[KNO-7] the truth is per serving', () => {
    // A can of cola of 368 g with 0.055 g of phosphoric acid (31.61 % phosphorus) in 100 g: 64 mg of phosphorus, all of it added.
    const cola = knownFoods().find(({ id }) => id === 'cola-first')!;
    expect(cola.truth.phosphorusMg).toBeCloseTo(3.68 * 0.055 * 316.1, 0);
    expect(cola.truth.addedPhosphorusMg).toBeCloseTo(cola.truth.phosphorusMg, 6);
    expect(cola.ndbUsed).toEqual(['19351']);
  });
});

/** Grams of protein and milligrams of sodium in 100 g that foods of the kind hold, wide: common practice, no source. */
const plausible: Readonly<Record<Kind, { readonly protein: readonly [number, number]; readonly sodium: readonly [number, number] }>> = {
  bread: { protein: [2, 14], sodium: [0, 700] },
  'cracker or cookie': { protein: [3, 14], sodium: [200, 1100] },
  'breakfast cereal or bar': { protein: [3, 28], sodium: [50, 800] },
  'processed cheese': { protein: [4, 24], sodium: [450, 1600] },
  'cheese dish': { protein: [4, 18], sodium: [200, 900] },
  'deli meat or sausage': { protein: [11, 24], sodium: [500, 1700] },
  'injected poultry or fish': { protein: [11, 22], sodium: [150, 650] },
  'frozen meal': { protein: [4, 10], sodium: [150, 550] },
  soup: { protein: [0.5, 11], sodium: [150, 1800] },
  'sauce or dressing': { protein: [0, 12], sodium: [150, 3000] },
  'canned bean or vegetable': { protein: [0.5, 8], sodium: [100, 400] },
  'plant drink or slice': { protein: [0, 18], sodium: [15, 950] },
  'dairy dessert or yogurt': { protein: [0, 10], sodium: [15, 320] },
  'soft drink': { protein: [0, 0.2], sodium: [0, 60] },
  snack: { protein: [4, 24], sodium: [100, 1400] },
  'baking mix or pudding': { protein: [0, 14], sodium: [200, 1500] },
};

/** The name of an item on the label, in small letters and without its brackets. */
function nameOf(item: Line | Group): string {
  return ('parts' in item ? item.heading : item.words).toLowerCase().replace(/ ?\(.*/, '');
}
