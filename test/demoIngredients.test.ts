import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import ingredients from '#data/demo/ingredients.json' with { type: 'json' };
import { companionFoods, demoFoods } from '#data/demo/recipes.ts';
import { isRecipe, partsOf } from '#data/packages/recipe.ts';
import { openDataFolder } from './openData.ts';

describe('[DEM-4] the ingredients of the demo', () => {
  type Ingredient = {
    readonly source: { readonly kind: string; readonly ndb?: string; readonly formula?: string; readonly why?: string };
    readonly per100G: Readonly<Record<string, number>>;
    readonly ownFigures?: Readonly<Record<string, string>>;
  };
  const entries = Object.entries(ingredients as Readonly<Record<string, Ingredient>>);
  const recipes = [...Object.values(demoFoods).flat(), ...companionFoods].filter(isRecipe);
  const used = new Set(recipes.flatMap(({ items }) => items.flatMap(partsOf).map(({ of }) => of)));

  it('are those that a recipe uses and no more', () => {
    expect(entries.map(([name]) => name).filter(name => !used.has(name))).toEqual([]);
  });

  it('have the figures of SR28', ({ skip }) => {
    const sr28 = join(openDataFolder, 'usda-sr28.csv');
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
