import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import ingredientsJson from '#data/demo/ingredients.json' with { type: 'json' };
import { demoFiles } from '#data/demo/makeDemo.ts';
import { companionFoods, type DemoFood, demoFoods } from '#data/demo/recipes.ts';
import { compositionPer100G } from '#data/packages/composition.ts';
import { ingredientsSchema } from '#data/packages/ingredient.ts';
import { gramsOf, isRecipe, partsOf, type Recipe } from '#data/packages/recipe.ts';
import { statementOrder, statementText } from '#data/packages/statementText.ts';

const folder = fileURLToPath(new URL('../data/demo', import.meta.url));
const foods: readonly DemoFood[] = Object.values(demoFoods).flat();
const recipes = [...foods, ...companionFoods].filter(isRecipe);
const ingredients = ingredientsSchema.parse(ingredientsJson);
const part = (name: string, grams: number) => ({ grams, of: name, ingredient: ingredients[name]!, words: name });
const share = (recipe: Recipe, of: (name: string) => boolean) =>
  recipe.items
    .flatMap(partsOf)
    .filter(part => of(part.of))
    .reduce((sum, { grams }) => sum + grams, 0) /
  (recipe.yieldG / 100);

describe('the recipes of the demo', () => {
  it('[DEM-6] there are at least 66 foods in three categories, 16 makers and three shops', () => {
    const names = new Set(foods.map(({ sold, name }) => `${sold.maker.name} ${name}`));
    expect(names.size).toBeGreaterThanOrEqual(66);
    expect(Object.values(demoFoods).map(list => list.length >= 18)).toEqual([true, true, true]);
    expect(new Set(foods.map(({ sold }) => sold.maker.name)).size).toBeGreaterThanOrEqual(16);
    expect(new Set(foods.map(({ sold }) => sold.readAt))).toEqual(new Set(['Brackwater Market', 'Tollen Foods', 'Pennyfold Pantry']));
    expect(new Set(foods.map(({ id }) => id)).size).toBe(foods.length);
  });

  it.each(recipes)('[DEM-1] $id accounts for 100 g, and no more water leaves than goes in', recipe => {
    expect(recipe.items.reduce((sum, item) => sum + gramsOf(item), 0)).toBeCloseTo(100, 3);
    expect(compositionPer100G(recipe).waterG).toBeGreaterThanOrEqual(0);
  });

  it('[DEM-1] what cooks off is water: the rest is left in fewer grams', () => {
    // 2 g of salt are 787 mg of sodium (39.34 %, atomic weights of IUPAC 2021); left in 80 g they are 984 mg per 100 g.
    const roast = {
      ...recipes[0]!,
      items: [part('water', 98), part('salt', 2)],
      yieldG: 80,
    };
    expect(compositionPer100G(roast).sodiumMg).toBeCloseTo(983.5, 0);
    expect(compositionPer100G(roast).waterG).toBeCloseTo(97.5, 6);
  });

  it('[DEM-1] energy is 4, 4 and 9 kcal a gram before rounding, 21 CFR 101.9(c)(1)(i)(B)', () => {
    // SR28 01009, cheddar: 24.04 g protein, 1.33 g carbohydrate, 33.82 g fat.
    const cheddar = { ...recipes[0]!, items: [part('cheddar cheese', 100)], yieldG: 100 };
    expect(compositionPer100G(cheddar).energyKcal).toBeCloseTo(4 * 24.04 + 4 * 1.33 + 9 * 33.82, 6);
  });

  it.each(recipes)('[DEM-2] the statement of $id goes down by weight, and small things alone follow the clause', recipe => {
    const { style } = recipe.sold.maker;
    const { ordered, afterClause } = statementOrder(recipe, style);
    const text = statementText(recipe, style).toLowerCase();
    const firstWords = (item: Recipe['items'][number]) =>
      ('parts' in item ? item.name : item.words).toLowerCase().replaceAll(/[()[\]].*/g, '');
    let from = 0;
    for (const item of [...ordered, ...afterClause]) {
      const at = text.indexOf(firstWords(item), from);
      expect(at, firstWords(item)).toBeGreaterThanOrEqual(from);
      from = at + 1;
    }
    const weights = ordered.map(gramsOf);
    expect(weights).toEqual([...weights].sort((a, b) => b - a));
    for (const item of afterClause) expect(gramsOf(item) / Math.min(1, recipe.yieldG / 100)).toBeLessThanOrEqual(style.clause!.percent);
    const listed = [...ordered, ...afterClause];
    expect(listed.findIndex(item => 'parts' in item && item.colon === true)).toSatisfy(
      (at: number) => at === -1 || at === listed.length - 1,
    );
  });

  it.each(recipes)('[DEM-2] the statement of $id is read as the recipe has it: every true share lies in its bounds', recipe => {
    const { style } = recipe.sold.maker;
    const { value, issues } = parseStatement(statementText(recipe, style));
    const { ordered, afterClause } = statementOrder(recipe, style);
    expect(issues).toEqual([]);
    const items = [...ordered, ...afterClause];
    const shares = value.ingredients.map(({ name, sharePercent }) => ({ name: name.toLowerCase(), sharePercent }));
    for (const item of items) {
      if (!('parts' in item) && item.ingredient.printed.replace(/\(.*/, '').includes(',')) continue;
      const words = ('parts' in item ? item.name : item.words).toLowerCase().replace(/ ?\(.*/, '');
      const found = shares.filter(({ name }) => name === words);
      expect(found.length, `${words} in ${shares.map(({ name }) => name).join('; ')}`).toBeGreaterThan(0);
      const [{ sharePercent }] = found as [(typeof found)[0]];
      expect(gramsOf(item), `${words} from ${sharePercent.lo}`).toBeGreaterThanOrEqual(sharePercent.lo - 1e-9);
      expect(gramsOf(item), `${words} up to ${sharePercent.hi}`).toBeLessThanOrEqual(sharePercent.hi + 1e-9);
    }
  });
});

describe('[DEM-9] additives stay under their legal ceilings', () => {
  const meats = demoFoods['sandwich slices']
    .filter(isRecipe)
    .filter(({ items }) =>
      [
        'turkey breast',
        'turkey thigh',
        'chicken breast',
        'chicken thigh',
        'ham meat',
        'beef round',
        'beef brisket',
        'beef, 25 % fat',
        'pork loin',
      ].includes(items.flatMap(partsOf)[0]!.of),
    );
  // 9 CFR 424.21(c): phosphates 0.5 % of the product, nitrite 200 ppm, lactate 4.8 %, diacetate 0.25 %, erythorbate 7/8 oz to 100 lb (547 ppm).
  const ofMeat: readonly [string, (name: string) => boolean, number][] = [
    ['phosphates', name => /phosphate$|phosphates$/.test(name), 0.5],
    ['nitrite', name => name === 'sodium nitrite', 0.02],
    ['lactates', name => name.endsWith('lactate'), 4.8],
    ['diacetate', name => name === 'sodium diacetate', 0.25],
    ['erythorbate', name => name === 'sodium erythorbate', 0.0547],
  ];

  it.each(ofMeat)('%s in meat', (_, of, ceiling) => {
    expect(meats.length).toBe(18);
    for (const meat of meats) expect(share(meat, of), meat.id).toBeLessThanOrEqual(ceiling);
  });

  it('emulsifying salts and sorbate in process cheese', () => {
    // 21 CFR 133.169(c), (d): the salts together 3 %, sorbates 0.2 %.
    const process = demoFoods['sandwich slices'].filter(isRecipe).filter(({ name }) => name.includes('process cheese'));
    expect(process.length).toBe(2);
    for (const cheese of process) {
      expect(
        share(cheese, name => /^sodium citrate$|phosphates?$/.test(name)),
        cheese.id,
      ).toBeLessThanOrEqual(3);
      expect(
        share(cheese, name => /^sorbic acid$|sorbate$/.test(name)),
        cheese.id,
      ).toBeLessThanOrEqual(0.2);
    }
  });
});

describe('[DEM-5] the committed files', () => {
  const made = demoFiles();

  it.each(Object.keys(made))('%s is what the script makes', path => {
    expect(readFileSync(join(folder, path), 'utf8')).toBe(made[path]);
  });

  it('there are no plates but those that the script makes', () => {
    expect(globSync('plates/*.json', { cwd: folder }).sort()).toEqual(
      Object.keys(made)
        .filter(path => path.startsWith('plates/'))
        .sort(),
    );
  });
});
