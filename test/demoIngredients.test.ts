import { describe, expect, it } from 'vitest';
import ingredients from '#data/demo/ingredients.json' with { type: 'json' };
import { companionFoods, demoFoods } from '#data/demo/recipes.ts';
import { isRecipe, partsOf } from '#data/packages/recipe.ts';
import { keptSr28 } from '../data/reference/sr28.ts';

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

  it('have the figures of SR28', () => {
    const fromRows = [
      'waterG',
      'proteinG',
      'fatG',
      'carbohydrateG',
      'fiberG',
      'totalSugarsG',
      'calciumMg',
      'ironMg',
      'phosphorusMg',
      'potassiumMg',
      'sodiumMg',
      'vitaminDMcg',
      'saturatedFatG',
      'cholesterolMg',
    ] as const;
    const compared = entries.filter(([, { source }]) => source.kind === 'sr28');
    expect(compared.length).toBeGreaterThan(100);
    const differing: string[] = [];
    for (const [name, { source, per100G, ownFigures = {} }] of compared) {
      const row = keptSr28.get(source.ndb!)!;
      for (const nutrient of fromRows) {
        const cell = row[nutrient];
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
