import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ClientAim, clientAims } from '#core/client/aims/clientAims.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { type AimedFood, aimRank, byAimRank, notToldOfAims } from './aimOrder.ts';
import { unsafeFood } from './foodSafety.ts';

const alone: Plate = { id: 'alone', title: 'on its own', portion: { servings: 1 }, companions: [] };

const aimed = (name: string, panel: PrintedLabel['panel'], statement = 'Rice, water.', category?: string): AimedFood => {
  const food = foodWith(name, { panel, statement, serving: { household: '1 cup', grams: 240 } });
  return { food, plate: alone, category, unsafe: unsafeFood(food, category), useEstimates: false };
};

function inOrder(aims: readonly ClientAim[], foods: readonly AimedFood[]): readonly string[] {
  return foods
    .map(one => ({ name: one.food.name, rank: aimRank(aims, one) }))
    .sort((a, b) => byAimRank(a.rank, b.rank))
    .map(({ name }) => name);
}

const phosphorus = clientAims({
  targets: [{ item: 'phosphorus', range: { lo: 0, hi: 1000 }, limit: 'at-most' }],
  isSuppressed: false,
});

describe('foods in the order of a client’s aims', () => {
  it('[CLT-66] high phosphorus: no phosphate named before few milligrams; what is not told stands last, not as 0', () => {
    const foods = [
      aimed('Untold', {}),
      aimed('Rich', { phosphorusMg: 300 }),
      aimed('Named', { phosphorusMg: 30 }, 'Rice, sodium phosphates.'),
      aimed('Lean', { phosphorusMg: 40 }),
    ];
    expect(inOrder(phosphorus, foods)).toEqual(['Lean', 'Rich', 'Untold', 'Named']);
    expect(notToldOfAims(phosphorus, foods[0]!)).toEqual(['phosphorusMg']);
    expect(notToldOfAims(phosphorus, foods[1]!)).toEqual([]);
  });

  it('[CLT-66] losing weight: most energy, then most protein, at the low end of what is known', () => {
    const aims = clientAims({ targets: [], isSuppressed: false, states: { isWasting: true } });
    const wide = aimed('Wide', { proteinG: 30 });
    // 100 to 900 kcal counts as 100 in a need.
    const range = withAmounts(wide.food, { energyKcal: { kind: 'known', range: { lo: 100, hi: 900 }, source: 'printed' } });
    const foods = [
      aimed('Light', { energyKcal: 90, proteinG: 20 }),
      { ...wide, food: range },
      aimed('Dense', { energyKcal: 400, proteinG: 2 }),
      aimed('Dense with protein', { energyKcal: 410, proteinG: 20 }),
    ];
    expect(inOrder(aims, foods)).toEqual(['Dense with protein', 'Dense', 'Wide', 'Light']);
  });

  it('[CLT-66] a limit on fluid: soups and drinks after foods; one whose fluid nobody knows last', () => {
    const aims = clientAims({ targets: [{ item: 'fluid', range: { lo: 0, hi: 1000 }, limit: 'at-most' }], isSuppressed: false });
    const unmeasured = { ...aimed('Beef broth', {}), food: foodWith('Beef broth', { serving: { grams: 240 } }) };
    expect(inOrder(aims, [unmeasured, aimed('Tomato soup', {}), aimed('Rice', {})])).toEqual(['Rice', 'Tomato soup', 'Beef broth']);
    // A cereal is eaten with its milk.
    const milk = { food: aimed('Reduced fat milk', {}).food, portion: { servings: 0.5 } };
    const cereal = { ...aimed('Puffed wheat', {}), plate: { ...alone, companions: [milk] } };
    expect(inOrder(aims, [cereal, aimed('Rice', {})])).toEqual(['Rice', 'Puffed wheat']);
  });

  it('[CLT-66] after a transplant: safe as it comes before what has to be heated', () => {
    const aims = clientAims({ targets: [], isSuppressed: true });
    const foods = [aimed('Turkey slices', {}, 'Turkey.', 'sandwich slices'), aimed('Chickpea slices', {}, 'Chickpeas.', 'sandwich slices')];
    expect(inOrder(aims, foods)).toEqual(['Chickpea slices', 'Turkey slices']);
  });

  it('[CLT-66] an estimate counts only where estimates may be used', () => {
    const { food, ...rest } = aimed('Guessed', {});
    const guessed = withAmounts(food, { phosphorusMg: { kind: 'known', likely: 50, range: { lo: 40, hi: 60 }, source: 'estimated' } });
    expect(notToldOfAims(phosphorus, { ...rest, food: guessed })).toEqual(['phosphorusMg']);
    expect(notToldOfAims(phosphorus, { ...rest, food: guessed, useEstimates: true })).toEqual([]);
  });

  it('[CLT-66] law: whatever is aimed at, a food that tells every amount never stands behind one alike that tells none', () => {
    const figures = fc.record({
      potassiumMg: fc.integer({ min: 0, max: 900 }),
      phosphorusMg: fc.integer({ min: 0, max: 900 }),
      energyKcal: fc.integer({ min: 0, max: 900 }),
      proteinG: fc.integer({ min: 0, max: 60 }),
    });
    const limit = fc.constantFrom('at-most' as const, 'at-least' as const);
    const item = fc.constantFrom('potassium' as const, 'phosphorus' as const, 'energy' as const, 'protein' as const);
    fc.assert(
      fc.property(figures, item, limit, (panel, one, how) => {
        const aims = clientAims({ targets: [{ item: one, range: { lo: 500, hi: 500 }, limit: how }], isSuppressed: false });
        fc.pre(aims.length > 0);
        const told = aimRank(aims, aimed('Told', panel));
        const untold = aimRank(aims, aimed('Untold', {}));
        expect(byAimRank(told, untold)).toBeLessThan(0);
        expect(untold.at(-1)).toBe(Number.POSITIVE_INFINITY);
      }),
    );
  });
});
