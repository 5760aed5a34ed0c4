import { existsSync, globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { companionRecipes } from '#data/demo/companionRecipes.ts';
import { compositionPer100G } from '#data/demo/composition.ts';
import ingredients from '#data/demo/ingredients.json' with { type: 'json' };
import { demoFiles } from '#data/demo/makeDemo.ts';
import { makers, type PrintStyle } from '#data/demo/makers.ts';
import { type DemoFood, gramsOf, partsOf, type Recipe } from '#data/demo/recipe.ts';
import { demoFoods } from '#data/demo/recipes.ts';
import { statementOrder, statementText } from '#data/demo/statementText.ts';

const folder = fileURLToPath(new URL('../data/demo', import.meta.url));
const foods: readonly DemoFood[] = Object.values(demoFoods).flat();
const isRecipe = (food: DemoFood): food is Recipe => !('boxes' in food);
const recipes: readonly Recipe[] = [...foods.filter(isRecipe), ...Object.values(companionRecipes)];
const styleOf = (food: DemoFood): PrintStyle => makers[food.maker].style;
const share = (recipe: Recipe, of: (name: string) => boolean) =>
  recipe.items
    .flatMap(partsOf)
    .filter(part => of(part.of))
    .reduce((sum, { grams }) => sum + grams, 0) /
  ((recipe.yieldG ?? 100) / 100);

describe('the recipes of the demo', () => {
  it('[DEM-6] there are at least 66 foods in three categories, 16 makers and three shops', () => {
    const names = new Set(foods.map(({ maker, name }) => `${maker} ${name}`));
    expect(names.size).toBeGreaterThanOrEqual(66);
    expect(Object.values(demoFoods).map(list => list.length >= 18)).toEqual([true, true, true]);
    expect(new Set(foods.map(({ maker }) => makers[maker].name)).size).toBeGreaterThanOrEqual(16);
    expect(new Set(foods.map(({ readAt }) => readAt))).toEqual(new Set(['Brackwater Market', 'Tollen Foods', 'Pennyfold Pantry']));
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
      items: [
        { grams: 98, of: 'water' },
        { grams: 2, of: 'salt' },
      ],
      yieldG: 80,
    } as const satisfies Recipe;
    expect(compositionPer100G(roast).sodiumMg).toBeCloseTo(983.5, 0);
    expect(compositionPer100G(roast).waterG).toBeCloseTo(97.5, 6);
  });

  it('[DEM-1] energy is 4, 4 and 9 kcal a gram before rounding, 21 CFR 101.9(c)(1)(i)(B)', () => {
    // SR28 01009, cheddar: 24.04 g protein, 1.33 g carbohydrate, 33.82 g fat.
    const cheddar = { ...recipes[0]!, items: [{ grams: 100, of: 'cheddar cheese' }], yieldG: 100 } as const satisfies Recipe;
    expect(compositionPer100G(cheddar).energyKcal).toBeCloseTo(4 * 24.04 + 4 * 1.33 + 9 * 33.82, 6);
  });

  it.each(recipes)('[DEM-2] the statement of $id goes down by weight, and small things alone follow the clause', recipe => {
    const style = styleOf(recipe);
    const { ordered, afterClause } = statementOrder(recipe, style);
    const text = statementText(recipe, style).toLowerCase();
    const firstWords = (item: Recipe['items'][number]) =>
      ('parts' in item ? item.name : (item.as ?? ingredients[item.of].printed)).toLowerCase().replaceAll(/[()[\]].*/g, '');
    let from = 0;
    for (const item of [...ordered, ...afterClause]) {
      const at = text.indexOf(firstWords(item), from);
      expect(at, firstWords(item)).toBeGreaterThanOrEqual(from);
      from = at + 1;
    }
    const weights = ordered.map(gramsOf);
    expect(weights).toEqual([...weights].sort((a, b) => b - a));
    for (const item of afterClause)
      expect(gramsOf(item) / Math.min(1, (recipe.yieldG ?? 100) / 100)).toBeLessThanOrEqual(style.clause!.percent);
    const all = [...ordered, ...afterClause];
    expect(all.findIndex(item => 'parts' in item && item.colon === true)).toSatisfy((at: number) => at === -1 || at === all.length - 1);
  });

  it.each(recipes)('[DEM-2] the statement of $id is read as the recipe has it: every true share lies in its bounds', recipe => {
    const style = styleOf(recipe);
    const { value, issues } = parseStatement(statementText(recipe, style));
    const { ordered, afterClause } = statementOrder(recipe, style);
    expect(issues).toEqual([]);
    const items = [...ordered, ...afterClause];
    const shares = value.ingredients.map(({ name, sharePercent }) => ({ name: name.toLowerCase(), sharePercent }));
    for (const item of items) {
      if (!('parts' in item) && ingredients[item.of].printed.replace(/\(.*/, '').includes(',')) continue;
      const words = ('parts' in item ? item.name : (item.as ?? ingredients[item.of].printed)).toLowerCase().replace(/ ?\(.*/, '');
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

describe('[DEM-4] the ingredients of the demo', () => {
  type Ingredient = {
    readonly source: { readonly kind: string; readonly ndb?: string; readonly formula?: string; readonly why?: string };
    readonly per100G: Readonly<Record<string, number>>;
    readonly ownFigures?: Readonly<Record<string, string>>;
  };
  const entries = Object.entries(ingredients as Readonly<Record<string, Ingredient>>);
  const used = new Set<string>(recipes.flatMap(({ items }) => items.flatMap(partsOf).map(({ of }) => of)));

  it('are those that a recipe uses and no more', () => {
    expect(entries.map(([name]) => name).filter(name => !used.has(name))).toEqual([]);
  });

  it('have the figures of SR28', ({ skip }) => {
    const sr28 = join(process.env.PLATEWRIGHT_OPEN_DATA ?? fileURLToPath(new URL('../../shared/data', import.meta.url)), 'usda-sr28.csv');
    if (!existsSync(sr28)) {
      console.warn(`no ${sr28}: the figures of the demo ingredients are not compared with SR28`);
      skip();
    }
    // USDA National Nutrient Database for Standard Reference, release 28, abbreviated file; columns by their place.
    const columnOf = {
      waterG: 2,
      proteinG: 4,
      fatG: 5,
      carbohydrateG: 7,
      fiberG: 8,
      totalSugarsG: 9,
      calciumMg: 10,
      ironMg: 11,
      phosphorusMg: 13,
      potassiumMg: 14,
      sodiumMg: 15,
      vitaminDMcg: 41,
      saturatedFatG: 44,
      cholesterolMg: 47,
    };
    const rows = new Map(
      readFileSync(sr28, 'utf8')
        .split('\n')
        .map(line => cellsOf(line))
        .map(cells => [cells[0]!.replace('\uFEFF', ''), cells]),
    );
    const heading = rows.get('NDB_No')!;
    expect(Object.values(columnOf).map(column => heading[column])).toEqual([
      'Water_(g)',
      'Protein_(g)',
      'Lipid_Tot_(g)',
      'Carbohydrt_(g)',
      'Fiber_TD_(g)',
      'Sugar_Tot_(g)',
      'Calcium_(mg)',
      'Iron_(mg)',
      'Phosphorus_(mg)',
      'Potassium_(mg)',
      'Sodium_(mg)',
      'Vit_D_µg',
      'FA_Sat_(g)',
      'Cholestrl_(mg)',
    ]);
    const differing: string[] = [];
    for (const [name, { source, per100G, ownFigures = {} }] of entries) {
      if (source.kind !== 'sr28') continue;
      const row = rows.get(source.ndb!);
      for (const [nutrient, column] of Object.entries(columnOf)) {
        const cell = row?.[column] ?? '';
        const isOwn = nutrient in ownFigures;
        if (isOwn ? cell !== '' : cell === '' || Number(cell) !== per100G[nutrient]) differing.push(`${name} ${nutrient}: ${cell}`);
      }
    }
    expect(differing).toEqual([]);
  });

  it('have the mass fractions of their formulas', () => {
    // Abridged standard atomic weights, IUPAC 2021.
    const atomicWeight: Readonly<Record<string, number>> = {
      H: 1.008,
      C: 12.011,
      N: 14.007,
      O: 15.999,
      Na: 22.99,
      P: 30.974,
      S: 32.06,
      Cl: 35.45,
      K: 39.098,
      Ca: 40.078,
      Fe: 55.845,
      Zn: 65.38,
    };
    const traced = { sodiumMg: 'Na', phosphorusMg: 'P', potassiumMg: 'K', calciumMg: 'Ca', ironMg: 'Fe' };
    const byFormula = entries.filter(([, { source }]) => source.kind === 'formula');
    expect(byFormula.length).toBeGreaterThan(30);
    for (const [name, { source, per100G }] of byFormula) {
      const atoms = atomsOf(source.formula!);
      const mass = Object.entries(atoms).reduce((sum, [element, count]) => sum + atomicWeight[element]! * count, 0);
      for (const [nutrient, element] of Object.entries(traced)) {
        const mgPer100G = ((atoms[element] ?? 0) * atomicWeight[element]! * 100_000) / mass;
        expect(Math.abs(per100G[nutrient]! - mgPer100G), `${name} ${nutrient}`).toBeLessThanOrEqual(0.5);
      }
    }
    // Salt 39.34 % sodium, disodium phosphate 21.82 % phosphorus, potassium chloride 52.45 % potassium: handbook values, from memory.
    expect(ingredients.salt.per100G.sodiumMg / 1000).toBeCloseTo(39.34, 2);
    expect(ingredients['disodium phosphate'].per100G.phosphorusMg / 1000).toBeCloseTo(21.82, 2);
    expect(ingredients['potassium chloride'].per100G.potassiumMg / 1000).toBeCloseTo(52.45, 2);
  });

  it('say why where a figure is our own', () => {
    for (const [name, { source, ownFigures = {} }] of entries) {
      expect(source.kind === 'own' ? source.why?.length : 1, name).toBeGreaterThan(0);
      for (const why of Object.values(ownFigures)) expect(why.length, name).toBeGreaterThan(0);
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

/** Cells of a CSV line whose quoted cells hold no line break. */
function cellsOf(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '',
  );
}

/** `atomsOf('Ca(H2PO4)2')` is { Ca: 1, H: 4, P: 2, O: 8 }; water of crystallisation follows a dot. */
function atomsOf(formula: string): Record<string, number> {
  const atoms: Record<string, number> = {};
  const count = (text: string, times: number): void => {
    for (const [, group, groupTimes, element, elementTimes] of text.matchAll(/\(([^()]+)\)(\d*)|([A-Z][a-z]?)(\d*)/g)) {
      if (group !== undefined) count(group, times * Number(groupTimes || 1));
      else atoms[element!] = (atoms[element!] ?? 0) + times * Number(elementTimes || 1);
    }
  };
  for (const part of formula.split('·')) count(part.replace(/^\d+/, ''), Number(/^\d+/.exec(part)?.[0] ?? 1));
  return atoms;
}
