import { describe, expect, it } from 'vitest';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { gramsOf, partsOf, type Recipe, type RecipeItem } from '#data/packages/recipe.ts';
import { recipesFromJson } from '#data/packages/recipesFromJson.ts';
import { statementOrder, statementText } from '#data/packages/statementText.ts';
import { knownFoods, truthPer100G } from '../bench/knownRecipes/knownFoods.ts';
import { type Kind, kinds, knownRecipes, pantry, styleAt } from '../bench/knownRecipes/knownRecipes.ts';
import { sr28Figures } from '../bench/knownRecipes/sr28Figures.ts';
import { keptSr28 } from '../data/reference/sr28.ts';

const indexed = knownRecipes.map((recipe, index) => ({ id: recipe.id, recipe, style: styleAt(index), index }));
const oneThing = (of: string, yieldG = 100): Recipe => ({
  ...knownRecipes[0]!,
  yieldG,
  items: [{ grams: 100, of, ingredient: pantry[of]!, words: of }],
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

  it('[KNO-2] a food that leaves less than nothing for its last item is refused', () => {
    const issuesOf = (...items: readonly object[]) =>
      recipesFromJson(
        { category: 'bread', versions: ['first', 'second'], foods: [{ id: 'odd', serving: { household: '1 piece', grams: 10 }, items }] },
        { category: 'bread', ingredients: pantry },
      ).issues.map(({ place }) => place.heading);
    expect(issuesOf({ grams: 99, of: 'sugar' }, { of: 'water' })).toEqual([]);
    expect(issuesOf({ grams: [99, 101], of: 'sugar' }, { of: 'water' })).toEqual(['foods[0].items']);
    expect(issuesOf({ grams: 99, of: 'sugar' })).toEqual(['foods[0].items']);
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

describe('the truth of the foods of known recipe', () => {
  it('[KNO-3] what cooks off is water: the rest is left in fewer grams', () => {
    // SR28 01086, nonfat milk with milk solids: 90.38 g water, 104 mg phosphorus, 171 mg potassium.
    expect(truthPer100G(oneThing('skimMilk')).phosphorusMg).toBeCloseTo(104, 6);
    const boiledDown = truthPer100G(oneThing('skimMilk', 50));
    expect(boiledDown.phosphorusMg).toBeCloseTo(208, 6);
    expect(boiledDown.potassiumMg).toBeCloseTo(342, 6);
    expect(boiledDown.waterG).toBeCloseTo(80.76, 2);
    expect(() => truthPer100G(oneThing('skimMilk', 9))).toThrow(RangeError);
  });

  it('[KNO-3] additives bring what their formulas hold; phosphorus of lecithin is not added phosphorus', () => {
    // Salt 39.34 % sodium, disodium phosphate 21.82 % phosphorus and 32.39 % sodium, potassium chloride 52.45 % potassium: handbook values, from memory.
    expect(truthPer100G(oneThing('salt')).sodiumMg).toBeCloseTo(39_340, -1);
    const phosphate = truthPer100G(oneThing('disodiumPhosphate'));
    expect(phosphate.phosphorusMg).toBeCloseTo(21_820, -1);
    expect(phosphate.addedPhosphorusMg).toBe(phosphate.phosphorusMg);
    expect(phosphate.sodiumMg).toBeCloseTo(32_390, -1);
    expect(truthPer100G(oneThing('potassiumChloride')).addedPotassiumMg).toBeCloseTo(52_450, -1);
    expect(truthPer100G(oneThing('lecithin')).phosphorusMg).toBeGreaterThan(3000);
    expect(truthPer100G(oneThing('lecithin')).addedPhosphorusMg).toBe(0);
  });

  it('[KNO-3] every food of the pantry has its figures, and a row without them is refused', () => {
    for (const item of Object.values(pantry)) expect(() => sr28Figures(item)).not.toThrow();
    const without = [...keptSr28.values()].find(row => row.phosphorusMg === '')!;
    expect(() => sr28Figures({ printed: 'unknown', source: { kind: 'sr28', ndb: without.ndb } })).toThrow(/phosphorusMg/);
    expect(() => sr28Figures({ printed: 'nothing', source: { kind: 'sr28', ndb: '99999' } })).toThrow(/no row/);
  });

  it('[KNO-3] every item of the pantry is used', () => {
    const used = new Set<unknown>(knownRecipes.flatMap(({ items }) => items.flatMap(partsOf).map(({ ingredient }) => ingredient)));
    expect(
      Object.entries(pantry)
        .filter(([, item]) => !used.has(item))
        .map(([name]) => name),
    ).toEqual([]);
  });

  it.each(indexed)('[KNO-6] $id adds up by weight and holds what its kind holds', ({ recipe }) => {
    const { waterG, proteinG, fatG, carbohydrateG, sodiumMg, phosphorusMg, addedPhosphorusMg, potassiumMg, addedPotassiumMg } =
      truthPer100G(recipe);
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
function nameOf(item: RecipeItem): string {
  return ('parts' in item ? item.name : item.words).toLowerCase().replace(/ ?\(.*/, '');
}
