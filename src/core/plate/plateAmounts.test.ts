import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { knownExactly, unknown } from '#core/quantity/amount.ts';
import { builtInPlates } from './builtInPlates.ts';
import { plateAmounts } from './plateAmounts.ts';
import { foodWith, withAmounts } from './plateFixture.ts';

const slices = foodWith('Slices', { serving: { household: '4 slices', grams: 56 }, panel: { energyKcal: 70, sodiumMg: 150 } });

describe('plateAmounts', () => {
  it('[PLT-1] half the serving is half of the printed figure and half of its range', () => {
    // 21 CFR 101.9(c)(4): a printed 150 mg stands for 145 up to 155 mg.
    const { sodiumMg } = plateAmounts([{ food: slices, portion: { grams: 28 } }]);
    expect(sodiumMg).toEqual({ judged: { lo: 75, hi: 75 }, range: { lo: 72.5, hi: 77.5 }, estimated: false, missing: [] });
  });

  it('[PLT-5] an unknown part is carried by name and not counted as zero', () => {
    const { potassiumMg } = plateAmounts([
      { food: withAmounts(slices, { potassiumMg: knownExactly(80, 'printed') }), portion: { servings: 1 } },
      { food: { ...slices, name: 'Other slices' }, portion: { servings: 1 } },
    ]);
    expect(potassiumMg.judged).toEqual({ lo: 80, hi: 80 });
    expect(potassiumMg.missing).toEqual([{ of: 'Other slices', reason: 'not-printed' }]);
  });

  it('[PLT-5] a portion that cannot be told makes every nutrient of the food unknown', () => {
    const totals = plateAmounts([{ food: slices, portion: { measure: 'scoop', count: 1 } }]);
    expect(totals.sodiumMg.missing).toEqual([{ of: 'Slices', reason: 'no-measure-mass' }]);
  });

  it('[PLT-7] 2 oz of dry pasta are 200 kcal and 0 mg sodium (common practice, no source), other nutrients unknown', () => {
    const plate = builtInPlates.find(({ id }) => id === 'with-dry-pasta');
    const totals = plateAmounts(plate?.companions ?? []);
    expect(totals.energyKcal).toMatchObject({ judged: { lo: 200, hi: 200 }, range: { lo: 200, hi: 200 }, missing: [] });
    expect(totals.sodiumMg).toMatchObject({ judged: { lo: 0, hi: 0 }, range: { lo: 0, hi: 0 }, missing: [] });
    expect(totals.potassiumMg.missing).toHaveLength(1);
    expect(totals.proteinG.missing).toHaveLength(1);
  });

  it('[PLT-1] law: a sum of two portions is the portion of the sum', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2000 }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (mg, a, b) => {
          const food = withAmounts(slices, {
            sodiumMg: { kind: 'known', range: { lo: mg, hi: 2 * mg }, source: 'printed' },
            ironMg: unknown('not-printed'),
          });
          const two = plateAmounts([
            { food, portion: { servings: a } },
            { food, portion: { servings: b } },
          ]).sodiumMg;
          const one = plateAmounts([{ food, portion: { servings: a + b } }]).sodiumMg;
          expect(two.range.lo).toBeCloseTo(one.range.lo, 6);
          expect(two.range.hi).toBeCloseTo(one.range.hi, 6);
        },
      ),
    );
  });
});
