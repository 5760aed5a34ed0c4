import { describe, expect, it } from 'vitest';
import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { largestShareThatFits } from '#core/yardstick/waysIn.ts';
import type { Test, Yardstick } from '#core/yardstick/yardstick.ts';
import { portionsOfFood } from './portionsOfFood.ts';

const alone: Plate = { id: 'alone', title: 'on its own', portion: { grams: 200 }, companions: [] };
const bread = foodWith('Bread', { panel: { energyKcal: 400, sodiumMg: 20 }, statement: 'Rice flour.' });
const withBread: Plate = { ...alone, companions: [{ food: bread, portion: { servings: 1 } }] };

function food(statement: string, more: Partial<PrintedLabel> = {}) {
  return foodWith('Noodles', { statement, serving: { grams: 100 }, panel: { energyKcal: 100, sodiumMg: 212 }, ...more });
}

function yardstick(...tests: readonly Omit<Test, 'source'>[]): Yardstick {
  const source = { kind: 'clinic', text: 'own' } as const;
  return {
    id: 'y',
    title: 'y',
    purpose: '',
    tests: tests.map(one => ({ ...one, source })),
    classScales: [],
    settings: 'any',
    cautions: [],
  };
}

const sodium = { id: 'sodium', measure: { kind: 'nutrient', nutrient: 'sodiumMg' }, basis: 'on-plate', atMost: 600 } as const;
const noPhosphate = { id: 'p', measure: { kind: 'additive', class: 'phosphate' }, basis: 'on-plate', absent: true } as const;
const noPeanut = { id: 'n', measure: { kind: 'ingredient', kin: 'peanut' }, basis: 'as-eaten', absent: true } as const;
const ratio = { id: 'r', measure: { kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' }, basis: 'as-eaten', atMost: 1 } as const;
const difference = {
  id: 'd',
  measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' },
  basis: 'on-plate',
  atMost: 0,
} as const;
const per100G = { id: 'g', measure: { kind: 'nutrient', nutrient: 'sodiumMg' }, basis: 'per-100-g', atMost: 140 } as const;
const perServing = { ...per100G, id: 's', basis: 'per-serving' } as const;

const portions = (statement: string, tests: readonly Omit<Test, 'source'>[], plate = alone) =>
  portionsOfFood({ food: food(statement), plate, yardstick: yardstick(...tests), switchedOn: [], shelf: { foods: [], plates: [] } });

describe('how much of a food fits', () => {
  it('[YST-39] 283 g is the most where the portion decides', () => {
    // 600 mg over 212 mg in 100 g.
    expect(portions('Rice.', [sodium, noPhosphate])).toMatchObject({ tippingGrams: 283, tippingText: '283 g is the most that fits.' });
  });

  it.each([
    ['an additive named', 'Rice, disodium phosphate.', noPhosphate, 'over'],
    ['an additive only possible', 'Rice. May contain disodium phosphate.', noPhosphate, "can't tell"],
    ['an ingredient named', 'Rice, peanuts.', noPeanut, 'over'],
    ['an ingredient only possible', 'Rice. May contain peanuts.', noPeanut, "can't tell"],
    ['a ratio of the food alone', 'Rice.', ratio, 'over'],
    ['sodium no more than energy, nothing beside it', 'Rice.', difference, 'over'],
    ['a figure per 100 g', 'Rice.', per100G, 'over'],
    ['a figure per serving', 'Rice.', perServing, 'over'],
  ] as const)('[YST-39] %s: there is no portion, and the reason stands in its place', (_title, statement, test, verdict) => {
    const told = portions(statement, [sodium, test]);
    expect(told.noPortion).toMatchObject({ testId: test.id, verdict });
    expect(told.noPortion?.why.length).toBeGreaterThan(10);
    expect(told).toMatchObject({ tippingGrams: null, tippingText: 'No portion changes this.' });
    expect(largestShareThatFits({ food: food(statement), plate: alone, yardstick: yardstick(sodium, test) })).toBe(0);
  });

  it('[YST-39] with bread beside it a smaller portion does change sodium against energy', () => {
    // Bread leaves 380 mg; each 100 g brings 112 mg more sodium than kcal: 339 g.
    const told = portions('Rice.', [difference], withBread);
    expect(told.noPortion).toBeUndefined();
    expect(told.tippingGrams).toBe(339);
  });
});
