import { describe, expect, it } from 'vitest';
import { clientWith, today } from '#core/client/assessment/clientFixture.ts';
import type { TargetItem } from '#core/client/prescription/target.ts';
import type { DecidedTarget } from '#core/client/record/record.ts';
import { recordOf } from '#core/client/record/recordFixture.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import type { ShelfFood } from '../shelf.ts';
import { whatFits } from './whatFits.ts';

const alone: Plate = { id: 'alone', title: 'on its own', portion: { servings: 1 }, companions: [] };

function target(item: TargetItem, hi: number, unit: DecidedTarget['unit'] = 'mg'): DecidedTarget {
  return { item, unit, kind: 'bounded', range: { lo: 0, hi }, limit: 'at-most', from: 'own', reason: 'r', says: 's' };
}

function shelved(name: string, panel: PrintedLabel['panel'], category: string, statement = 'Rice, water.'): ShelfFood {
  const food = foodWith(name, { panel, serving: { household: '1 cup', grams: 240 }, statement });
  return {
    row: { id: food.id, name, category, version: 1, isDemo: false },
    label: { kind: 'read', id: food.id, foodId: food.id, printed: food.label.printed, addedAt: '2026-06-01T00:00:00Z', photoIds: [] },
    food,
  };
}

function fits(
  targets: readonly DecidedTarget[],
  served: Parameters<typeof whatFits>[0]['served'],
  more: Parameters<typeof clientWith>[0] = {},
) {
  const record = recordOf(clientWith(more));
  const signed = { ...record, prescriptions: record.prescriptions.map(one => ({ ...one, targets })) };
  return whatFits({ record: signed, served, meal: 'lunch', useEstimates: false, today });
}

const inOrder = (rows: ReturnType<typeof fits>['rows']) => rows.toSorted((a, b) => a.place - b.place).map(({ name }) => name);

describe('several categories at once', () => {
  const milk = {
    food: foodWith('Reduced fat milk', { panel: { sodiumMg: 50 }, serving: { household: '1 cup', grams: 245 } }),
    portion: { servings: 1 },
  };
  const withMilk: Plate = { ...alone, id: 'with-milk', companions: [milk] };
  const cereal = shelved('Puffed rice', { energyKcal: 60, sodiumMg: 10 }, 'cold cereals');
  const soup = shelved('Tomato soup', { energyKcal: 90, sodiumMg: 700 }, 'soups');
  const served = [
    { plate: withMilk, foods: [cereal] },
    { plate: alone, foods: [soup] },
  ];

  it('[CLT-68] each on its own plate, companions counted; every food is counted once', () => {
    const { rows, counts } = fits([target('sodium', 2000)], served);
    expect(rows.map(({ name, category, plate, verdict, amounts }) => [name, category, plate, verdict, amounts[0]?.text])).toEqual([
      ['Puffed rice', 'cold cereals', 'with-milk', 'fits', '60 mg'],
      ['Tomato soup', 'soups', 'alone', 'over', '700 mg'],
    ]);
    expect(counts).toEqual({ fits: 1, nearly: 0, over: 1, "can't tell": 0, avoided: 0 });
    // 540 of 600 mg are left; 100 mg over 600.
    expect(rows.map(({ margin }) => margin)).toEqual([expect.closeTo(0.9), expect.closeTo(-1 / 6)]);
  });

  it('[CLT-68] a limit on fluid: what counts says of how many cups, with the milk it is eaten with', () => {
    // 1,200 mL are 5 cups of 240 mL.
    const { rows } = fits([target('sodium', 2000), target('fluid', 1200, 'mL')], served);
    expect(rows.map(({ fluid }) => fluid)).toEqual(['counts as 1 of 5 cups', 'counts as 1 of 5 cups']);
    expect(fits([target('sodium', 2000)], served).rows.map(({ fluid }) => fluid)).toEqual([undefined, undefined]);
  });

  it('[CLT-68] nothing asked about, nothing found', () => {
    expect(fits([target('sodium', 2000)], []).rows).toEqual([]);
    expect(fits([target('sodium', 2000)], [{ plate: alone, foods: [] }])).toMatchObject({ rows: [], counts: { fits: 0 } });
  });
});

describe('what matters for this client', () => {
  const lean = shelved('Lean', { energyKcal: 90, sodiumMg: 400, phosphorusMg: 30 }, 'bowls');
  const rich = shelved('Rich', { energyKcal: 90, sodiumMg: 10, phosphorusMg: 250 }, 'bowls');
  const untold = shelved('Untold', { energyKcal: 90, sodiumMg: 10 }, 'bowls');
  const pork = shelved('Pork bowl', { energyKcal: 90, sodiumMg: 10, phosphorusMg: 10 }, 'bowls', 'Pork, rice.');
  const salty = shelved('Salty', { energyKcal: 90, sodiumMg: 900, phosphorusMg: 10 }, 'bowls');
  const served = [{ plate: alone, foods: [salty, pork, untold, rich, lean] }];

  it('[CLT-68] a signed phosphorus comes first of the amounts and orders what fits; without one sodium, and phosphorus is told', () => {
    const phosphorus = fits([target('sodium', 2000), target('phosphorus', 1000)], served);
    expect(phosphorus.nutrients[0]).toEqual({ nutrient: 'phosphorusMg', title: 'Phosphorus', isJudged: true });
    expect(inOrder(phosphorus.rows)).toEqual(['Pork bowl', 'Lean', 'Rich', 'Untold', 'Salty']);
    const sodium = fits([target('sodium', 2000)], served);
    expect(sodium.nutrients[0]).toMatchObject({ nutrient: 'sodiumMg', isJudged: true });
    expect(sodium.nutrients.find(({ nutrient }) => nutrient === 'phosphorusMg')?.title).toBe('Phosphorus, told');
  });

  it('[CLT-68] an amount that nobody knows is said, and sorted by nothing', () => {
    const { rows } = fits([target('sodium', 2000), target('phosphorus', 1000)], served);
    expect(rows.find(({ name }) => name === 'Untold')?.amounts[0]).toEqual({ text: 'not known', sortBy: null });
    expect(rows.find(({ name }) => name === 'Rich')?.amounts[0]).toEqual({ text: '250 mg', sortBy: 250 });
  });

  it('[CLT-68] an avoided food says so in the place of its verdict, is counted apart and stands last', () => {
    const { rows, counts } = fits([target('sodium', 2000)], served, { avoidedFoods: ['pork'] });
    expect(rows.filter(({ avoided }) => avoided !== undefined).map(({ name, avoided }) => [name, avoided])).toEqual([
      ['Pork bowl', 'avoided'],
    ]);
    expect(counts).toMatchObject({ fits: 3, over: 1, avoided: 1 });
    expect(inOrder(rows).at(-1)).toBe('Pork bowl');
    const allergic = fits([target('sodium', 2000)], served, { allergies: ['pork'] });
    expect(allergic.rows.find(({ name }) => name === 'Pork bowl')?.avoided).toBe('allergen');
  });

  it('[CLT-67] where the label does not tell, the row says which figure would settle it; where it tells, nothing', () => {
    // 30 % of 1,000 mg for lunch.
    const { rows } = fits([target('sodium', 2000), target('phosphorus', 1000)], served);
    expect(rows.find(({ name }) => name === 'Untold')?.settles).toBe('Phosphorus of up to 300 mg on the label would settle it: fits.');
    expect(rows.filter(({ settles }) => settles !== undefined)).toHaveLength(1);
  });
});
