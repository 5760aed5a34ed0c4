import { describe, expect, it } from 'vitest';
import { additiveTable } from '#core/additive/additiveTable.ts';
import { referenceFood, referenceTable } from '#core/reference/referenceFood.ts';
import { additiveContent, anyFood, referenceContent, salt, spices, traced, trifle, water } from './content.ts';

const contentOf = (id: string, certainty?: 'named' | 'near') => referenceContent(referenceFood(id)!, certainty);
const additive = (id: string) => additiveTable.find(row => row.id === id)!;
const flesh = ['meat', 'poultry', 'fish'];

describe('a food of the table', () => {
  /** Every figure that a food of the table has, with its spread. */
  const figures = referenceTable.foods.flatMap(food => {
    const { per1G } = referenceContent(food);
    return traced.flatMap(key => {
      const value = food.per100G[key];
      if (value === null) return [];
      const [low, high] = (food.spread[key] ?? [value, value]).map(one => one / 100) as [number, number];
      return [{ name: `${food.id} ${key}`, key, group: food.group, value: value / 100, low, high, ...per1G[key] }];
    });
  });

  it('[RCP-2] lies within its spread, which holds all its rows and is never below nothing', () => {
    const wrong = figures.filter(({ value, low, high, lo, mid, hi }) => !(mid === value && lo >= 0 && lo <= low && hi >= high));
    expect(wrong).toEqual([]);
    expect(figures.length).toBeGreaterThan(5_000);
  });

  // Upper quarter of the spread measured: 0.18 of a figure, iron 0.6; of vegetables 1.8 times that; and a few hundredths of a gram or milligram.
  it('[RCP-2] spreads by no more than was measured', () => {
    const wrong = figures.filter(({ key, group, value, low, high, lo, hi }) => {
      if (flesh.includes(group) || key === 'sodiumMg') return false;
      if (key === 'ironMg') return lo < Math.min(0.1 * value, low) - 0.013;
      return hi >= Math.max(1.33 * value, high) + 0.06 || lo <= Math.min(0.67 * value, low) - 0.06;
    });
    expect(wrong).toEqual([]);
  });

  it('[RCP-2] works out as measured: phosphorus of broccoli, 66 mg in 100 g', () => {
    // Share 0.11, 1.8 times for a vegetable, and 0.015 mg in a gram.
    const { lo, mid, hi } = contentOf('broccoli').per1G.phosphorusMg;
    expect([lo, mid, hi].map(one => Math.round(one * 1e6) / 1e6)).toEqual([0.51432, 0.66, 0.80568]);
    // Near it, 1.8 times as much again.
    const near = contentOf('broccoli', 'near').per1G.phosphorusMg;
    expect(near.hi).toBeCloseTo(0.66 * (1 + 0.11 * 1.8 * 1.8) + 0.015, 9);
    // Milk is alike the world over: 0.7 of it.
    expect(contentOf('whole-milk').per1G.phosphorusMg.hi).toBeCloseTo(0.84 * (1 + 0.11 * 0.7) + 0.015, 9);
    // Flesh 1.4 times, poultry 1.4.
    expect(contentOf('chicken-breast').per1G.phosphorusMg.hi).toBeCloseTo(2.13 * (1 + 0.11 * 1.4 * 1.4) + 0.015, 9);
  });

  it('[RCP-2] how fat a cut is, is the butcher’s choice: from a tenth to twice, or 12 g in 100 more', () => {
    const { fatG, saturatedFatG, proteinG } = contentOf('salmon').per1G;
    const rounded = [fatG.lo, fatG.hi, saturatedFatG.lo, saturatedFatG.hi].map(one => Math.round(one * 1e6) / 1e6);
    expect(rounded).toEqual([0.01342, 0.2684, 0.00305, 0.1505]);
    expect(proteinG.lo).toBeGreaterThan(0.1);
  });

  it('[RCP-2] how salty a cheese is, is its maker’s choice: from nothing to half as much again, above 100 mg in 100 g', () => {
    const { lo, hi } = contentOf('cheddar-cheese').per1G.sodiumMg;
    expect([lo, hi]).toEqual([0, 6.44 * 1.5]);
    expect(contentOf('whole-milk').per1G.sodiumMg.lo).toBeGreaterThan(0.2);
  });

  it('[RCP-2] what the table does not know is what any food may hold; of a starch, what its treatment may leave (21 CFR 172.892: 0.4 %)', () => {
    expect(contentOf('salmon').per1G.totalSugarsG).toEqual(anyFood.per1G.totalSugarsG);
    const { phosphorusMg, sodiumMg, potassiumMg } = contentOf('modified-corn-starch').per1G;
    expect([phosphorusMg.lo, phosphorusMg.hi, sodiumMg.hi]).toEqual([0, 4, 6]);
    expect(potassiumMg.mid).toBe(0.03);
  });

  it('[RCP-7] water is known to a tenth and 2 g in 100, and is never more than all', () => {
    const { lo, mid, hi } = contentOf('broccoli').water;
    expect([lo, mid, hi].map(one => Math.round(one * 1e6) / 1e6)).toEqual([0.7837, 0.893, 1]);
    expect(contentOf('sugar').water.lo).toBe(0);
    expect(contentOf('cheddar-cheese').water.hi).toBeCloseTo(0.371 * 1.1 + 0.02, 9);
  });

  it('[RCP-6] phosphorus goes with protein, from 2 g in 100 on', () => {
    const tie = contentOf('broccoli').perProtein!.phosphorusMg!;
    expect(tie.mid).toBeCloseTo(66 / 2.82, 9);
    expect([tie.lo, tie.hi]).toEqual([tie.mid * (1 - 0.1 * 1.8), tie.mid * (1 + 0.1 * 1.8)]);
    for (const food of referenceTable.foods) {
      const { proteinG, phosphorusMg } = food.per100G;
      const isTied = food.phosphorusKind !== 'inorganic' && proteinG !== null && proteinG >= 2 && phosphorusMg !== null && phosphorusMg > 0;
      expect(referenceContent(food).perProtein?.phosphorusMg !== undefined, food.id).toBe(isTied);
    }
  });

  it('[RCP-6] potassium goes with the protein of flesh, and with the carbohydrate of milk and plants from 3 g in 100 on', () => {
    const chicken = contentOf('chicken-breast');
    expect(chicken.perProtein!.potassiumMg!.mid).toBeCloseTo(334 / 22.5, 9);
    expect(chicken.perProtein!.potassiumMg!.hi).toBeCloseTo((334 / 22.5) * (1 + 0.14 * 1.4), 9);
    const milk = contentOf('whole-milk').potassiumPerCarbohydrate!;
    expect(milk.mid).toBeCloseTo(132 / 4.8, 9);
    expect([milk.lo, milk.hi]).toEqual([milk.mid * (1 - 0.14 * 0.7), milk.mid * (1 + 0.14 * 0.7)]);
    for (const food of referenceTable.foods) {
      const { carbohydrateG, potassiumMg } = food.per100G;
      const follows = ['dairy', 'vegetable', 'fruit', 'legume'].includes(food.group);
      const isTied = follows && carbohydrateG !== null && carbohydrateG >= 3 && potassiumMg !== null && potassiumMg > 0;
      const { perProtein, potassiumPerCarbohydrate } = referenceContent(food);
      expect(potassiumPerCarbohydrate !== undefined, food.id).toBe(isTied);
      if (!flesh.includes(food.group)) expect(perProtein?.potassiumMg, food.id).toBeUndefined();
    }
  });
});

describe('an additive', () => {
  it('[RCP-2] brings what its formula holds, and nothing else', () => {
    const { per1G, phosphorusKind, water: wet } = additiveContent(additive('tricalcium-phosphate'), []);
    expect(per1G.phosphorusMg.mid).toBe(1000 * additive('tricalcium-phosphate').massFraction.phosphorus!);
    expect(per1G.calciumMg.mid).toBe(1000 * additive('tricalcium-phosphate').massFraction.calcium!);
    // Sold as Ca3(PO4)2, 2 × 30.974 of 310.177 g/mol phosphorus, and as Ca5(PO4)3OH, 3 × 30.974 of 502.307 (IUPAC 2021).
    expect(per1G.phosphorusMg.hi).toBeCloseTo(61_948 / 310.177, 1);
    expect(per1G.phosphorusMg.lo).toBeCloseTo(92_922 / 502.307, 1);
    expect([per1G.proteinG.hi, per1G.fatG.hi, per1G.carbohydrateG.hi, per1G.sodiumMg.hi, per1G.potassiumMg.hi]).toEqual([0, 0, 0, 0, 0]);
    expect([phosphorusKind, wet.lo]).toEqual(['inorganic', 0]);
  });

  it('[RCP-2] one of several salts spans them all', () => {
    const rows = ['monosodium-phosphate', 'disodium-phosphate', 'trisodium-phosphate'].map(additive);
    const { phosphorusMg } = additiveContent(rows[1]!, rows).per1G;
    expect(phosphorusMg.hi).toBe(1000 * rows[0]!.massFraction.phosphorus!);
    expect(phosphorusMg.lo).toBeLessThan(1000 * rows[2]!.massFraction.phosphorus!);
    expect(phosphorusMg.mid).toBe(1000 * rows[1]!.massFraction.phosphorus!);
  });

  it('[RCP-2] a name without a formula may bring what such salts hold; where the table says none, nothing', () => {
    const { phosphorusMg, potassiumMg, sodiumMg, calciumMg } = additiveContent(additive('self-rising-flour'), []).per1G;
    // A quarter of most phosphates is phosphorus.
    expect([phosphorusMg.lo, phosphorusMg.mid, phosphorusMg.hi]).toEqual([0, 62.5, 250]);
    expect([potassiumMg.hi, sodiumMg.hi, calciumMg.hi]).toEqual([0, 350, 200]);
    expect(additiveContent(additive('baking-powder'), []).phosphorusKind).toBe('inorganic');
    expect(additiveContent(additive('modified-food-starch'), []).per1G.phosphorusMg.hi).toBe(0);
  });

  it('[RCP-2] the acid of an organic salt counts as carbohydrate, which is told by difference', () => {
    expect(additiveContent(additive('potassium-lactate'), []).per1G.carbohydrateG).toEqual({ lo: 0, mid: 0.5, hi: 1 });
    expect(additiveContent(additive('potassium-chloride'), []).per1G.carbohydrateG.hi).toBe(0);
    expect(additiveContent(additive('potassium-lactate'), []).phosphorusKind).toBe('unknown');
  });
});

describe('what is in no table', () => {
  it('[RCP-2] a gram holds no more than a gram, and the likely lies between the ends', () => {
    const citrate = additiveContent(additive('sodium-citrate'), []);
    for (const content of [anyFood, spices, trifle, water, salt(0.4), citrate])
      for (const [key, { lo, mid, hi }] of [...Object.entries(content.per1G), ['water', content.water] as const]) {
        expect(lo, key).toBeGreaterThanOrEqual(0);
        expect(mid, key).toBeGreaterThanOrEqual(lo);
        expect(hi, key).toBeGreaterThanOrEqual(mid);
        expect(hi, key).toBeLessThanOrEqual(key.endsWith('Mg') ? 1000 : 1);
      }
  });

  it('[RCP-2] water is all water, a salt brings calcium or nothing, neither any phosphorus', () => {
    expect([water.water, water.phosphorusKind]).toEqual([{ lo: 1, mid: 1, hi: 1 }, 'none']);
    expect(traced.every(key => water.per1G[key].hi === 0)).toBe(true);
    // Calcium carbonate is 40 % calcium (40.078 of 100.087 g/mol).
    expect(salt(0.4).per1G.calciumMg).toEqual({ lo: 0, mid: 240, hi: 400 });
    expect([salt(0).per1G.calciumMg.hi, salt(0.4).per1G.phosphorusMg.hi, salt(0.4).per1G.potassiumMg.hi]).toEqual([0, 0, 0]);
  });
});
