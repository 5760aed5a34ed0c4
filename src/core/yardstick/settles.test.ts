import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { clientYardstick } from './clientYardstick.ts';
import { judgePlate } from './judgePlate.ts';
import { settlingText, whatSettles } from './settles.ts';

const alone: Plate = { id: 'alone', title: 'on its own', portion: { servings: 1 }, companions: [] };
const food = (panel: PrintedLabel['panel'], statement: string | undefined = 'Rice, water.') =>
  foodWith('Bowl', { panel, serving: { household: '1 cup', grams: 100 }, ...(statement === '' ? {} : { statement }) });

/** 30 % of 2,000 mg sodium are 600 mg, of 2,000 mg potassium as many. */
const yardstick = (avoidedFoods: readonly string[] = [], limit: 'at-most' | 'below' = 'at-most') =>
  clientYardstick({
    targets: [
      { item: 'sodium', range: { lo: 0, hi: 2000 }, limit },
      { item: 'potassium', range: { lo: 0, hi: 2000 }, limit },
    ],
    avoidedFoods,
    percent: 30,
    meal: 'lunch',
    useEstimates: false,
  });

const said = (...[one, plate, by]: Parameters<typeof whatSettles>) => {
  const settling = whatSettles(one, plate, by);
  return settling && settlingText(settling, one.name);
};

describe('what would settle a verdict that cannot be told', () => {
  it('[CLT-67] the one figure that is missing, at the usual portion, with what the plate brings taken off', () => {
    // 600 mg less 90 mg of the bread, over two servings of the food: 255 mg a serving.
    const bread = { food: foodWith('Bread', { panel: { sodiumMg: 0, potassiumMg: 90 }, statement: 'Rice.' }), portion: { servings: 1 } };
    const plate: Plate = { ...alone, portion: { servings: 2 }, companions: [bread] };
    expect(said(food({ sodiumMg: 100 }), plate, yardstick())).toBe('Potassium of up to 255 mg on the label would settle it: fits.');
    // Under 600 mg: 600 alone is too much.
    expect(said(food({ sodiumMg: 100 }), alone, yardstick([], 'below'))).toBe(
      'Potassium of up to 599 mg on the label would settle it: fits.',
    );
  });

  it('[CLT-67] both figures where two tests are open; several foods on a plate are told together', () => {
    expect(said(food({}), alone, yardstick())).toBe(
      'Sodium of up to 600 mg on the label, and potassium of up to 600 mg on the label would settle it: fits.',
    );
    const bread = { food: foodWith('Bread', { panel: { sodiumMg: 0 }, statement: 'Rice.' }), portion: { servings: 1 } };
    expect(said(food({ sodiumMg: 1 }), { ...alone, companions: [bread] }, yardstick())).toBe(
      'Potassium of up to 600 mg together in Bowl and Bread would settle it: fits.',
    );
    expect(said(food({ sodiumMg: 1, potassiumMg: 1 }), { ...alone, companions: [bread] }, yardstick())).toContain(
      'Potassium of up to 599 mg on the label of Bread would settle it',
    );
  });

  it('[CLT-67] a word of the statement, the statement itself, a word that nobody knows, a portion that nobody weighed', () => {
    const figures = { sodiumMg: 1, potassiumMg: 1 };
    expect(said(food(figures, 'Rice, spices.'), alone, yardstick(['garlic']))).toMatch(
      /maker’s word that there is no garlic in it .*spices/i,
    );
    expect(said(food(figures, ''), alone, yardstick(['garlic']))).toBe('The ingredient statement would settle it: fits.');
    expect(said(food(figures), alone, yardstick(['zzyzx']))).toContain('“zzyzx” written as an ingredient');
    const cups: Plate = { ...alone, portion: { measure: 'scoop', count: 1 } };
    expect(said(food(figures), cups, yardstick())).toBe('What a serving weighs would settle it: fits.');
  });

  it('[CLT-67] everything told: nothing to settle', () => {
    expect(said(food({ sodiumMg: 1, potassiumMg: 1 }), alone, yardstick())).toBeUndefined();
    expect(said(food({ sodiumMg: 900, potassiumMg: 1 }), alone, yardstick())).toBeUndefined();
  });

  it('[CLT-67] law: with the figure that is told on the label the food fits, and with the next mg it does not', () => {
    const servings = fc.integer({ min: 1, max: 8 }).map(count => count / 2);
    const limits = fc.constantFrom('at-most' as const, 'below' as const);
    fc.assert(
      fc.property(servings, fc.integer({ min: 0, max: 500 }), limits, (count, beside, limit) => {
        const bread = foodWith('Bread', { panel: { sodiumMg: 0 }, statement: 'Rice.' });
        const companions = [{ food: withExactly(bread, beside), portion: { servings: 1 } }];
        const plate: Plate = { ...alone, portion: { servings: count }, companions };
        const by = yardstick([], limit);
        const [missing] = whatSettles(food({ sodiumMg: 1 }), plate, by)!.missing;
        expect(missing).toMatchObject({ kind: 'figure', nutrient: 'potassiumMg' });
        const upTo = missing?.kind === 'figure' ? missing.upTo! : Number.NaN;
        const verdict = (mg: number) => judgePlate({ food: withExactly(food({ sodiumMg: 1 }), mg), plate, yardstick: by }).verdict;
        expect(verdict(upTo)).toBe('fits');
        expect(verdict(upTo + 1)).toBe('over');
      }),
    );
  });
});

function withExactly(one: ReturnType<typeof foodWith>, potassiumMg: number) {
  const amount = { kind: 'known', printed: potassiumMg, range: { lo: potassiumMg, hi: potassiumMg }, source: 'printed' } as const;
  return { ...one, label: { ...one.label, amounts: { ...one.label.amounts, potassiumMg: amount } } };
}
