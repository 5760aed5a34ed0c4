import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { type Amount, knownExactly, unknown } from '#core/quantity/amount.ts';
import { judgePlate } from './judgePlate.ts';
import { largestShareThatFits, waysIn } from './waysIn.ts';
import type { Measure, Test, Yardstick } from './yardstick.ts';

const nutrientsUsed = ['sodiumMg', 'energyKcal', 'proteinG'] as const;
const plain = foodWith('Food', { serving: { household: '4 slices', grams: 56 } });

const printed: fc.Arbitrary<Amount> = fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 5 })).map(([value, half]) => ({
  kind: 'known',
  printed: value,
  range: { lo: Math.max(0, value - half), hi: value + half },
  source: 'printed',
}));
const wide: fc.Arbitrary<Amount> = fc
  .tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 1, max: 200 }))
  .map(([lo, width]) => ({ kind: 'known', range: { lo, hi: lo + width }, source: 'printed' }));
const known = fc.oneof(printed, printed, wide);

const foodOf = (name: string, amount: fc.Arbitrary<Amount>): fc.Arbitrary<PlateFood> =>
  fc
    .record({ sodiumMg: amount, energyKcal: amount, proteinG: amount })
    .map(amounts => ({ ...withAmounts(plain, amounts), id: name, name }));

const plateOf = (amount: fc.Arbitrary<Amount>): fc.Arbitrary<Plate> =>
  fc.array(fc.tuple(foodOf('Companion', amount), fc.constantFrom(0.5, 1, 2)), { maxLength: 2 }).map(companions => ({
    id: 'p',
    title: 'p',
    portion: { measure: 'slice', count: 4 },
    companions: companions.map(([food, servings], at) => ({
      food: { ...food, id: `c${at}`, name: `Companion ${at}` },
      portion: { servings },
    })),
  }));

const measure: fc.Arbitrary<Measure> = fc.oneof(
  fc.constantFrom<Measure>({ kind: 'nutrient', nutrient: 'sodiumMg' }, { kind: 'daily-value-percent', nutrient: 'sodiumMg' }),
  fc.constantFrom<Measure>(
    { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' },
    { kind: 'ratio', nutrient: 'sodiumMg', per: 'proteinG' },
  ),
);

const testOf = (bounds: readonly ('atMost' | 'atLeast' | 'below')[]): fc.Arbitrary<Test> =>
  fc
    .record({
      measure,
      bound: fc.constantFrom(...bounds),
      figure: fc.integer({ min: 0, max: 600 }),
      slack: fc.constantFrom(0, 10),
      basis: fc.constantFrom('as-eaten' as const, 'on-plate' as const),
    })
    .map(({ measure: what, bound, figure, slack, basis }) => ({
      id: 't',
      measure: what,
      basis,
      [bound]: figure,
      slack,
      source: { kind: 'clinic', text: 'own' },
    }));

const numRuns = process.env.PLATEWRIGHT_LONG === undefined ? 600 : 20_000;

const yardstickOf = (...tests: Test[]): Yardstick => ({
  id: 'y',
  title: 'y',
  purpose: '',
  tests,
  classScales: [],
  settings: 'any',
  cautions: [],
});

describe('laws', () => {
  it('[YST-3] a missing value never improves a verdict: "fits" and "nearly" stand with and without it', () => {
    fc.assert(
      fc.property(
        foodOf('Food', known),
        plateOf(known),
        testOf(['atMost', 'atLeast', 'below']),
        fc.constantFrom(...nutrientsUsed),
        fc.nat(2),
        (food, plate, test, lost, at) => {
          const yardstick = yardstickOf(test);
          const gone = { [lost]: unknown('not-printed') };
          const companion = plate.companions[at];
          const lessFood = companion ? food : withAmounts(food, gone);
          const lessPlate = companion
            ? { ...plate, companions: plate.companions.with(at, { ...companion, food: withAmounts(companion.food, gone) }) }
            : plate;
          const without = judgePlate({ food: lessFood, plate: lessPlate, yardstick }).verdict;
          const whole = judgePlate({ food, plate, yardstick }).verdict;
          if (without === 'fits' || without === 'nearly') expect(whole).toBe(without);
        },
      ),
      { numRuns },
    );
  });

  it('[YST-4] widening a range never turns a maximum from over into fits', () => {
    fc.assert(
      fc.property(
        foodOf('Food', wide),
        plateOf(known),
        testOf(['atMost', 'below']),
        fc.constantFrom(...nutrientsUsed),
        fc.nat(300),
        fc.nat(300),
        (food, plate, test, nutrient, down, up) => {
          const yardstick = yardstickOf(test);
          const amount = food.label.amounts[nutrient];
          if (amount.kind === 'unknown') return;
          const widened = withAmounts(food, {
            [nutrient]: { ...amount, range: { lo: Math.max(0, amount.range.lo - down), hi: amount.range.hi + up } },
          });
          if (judgePlate({ food, plate, yardstick }).verdict === 'over')
            expect(judgePlate({ food: widened, plate, yardstick }).verdict).not.toBe('fits');
        },
      ),
      { numRuns },
    );
  });

  it('[YST-16] another test never improves a joined verdict', () => {
    const rank = ['fits', 'nearly', "can't tell", 'over'];
    fc.assert(
      fc.property(
        foodOf('Food', fc.oneof(known, fc.constant<Amount>(unknown('not-printed')))),
        plateOf(known),
        testOf(['atMost', 'atLeast']),
        testOf(['atMost', 'atLeast']),
        (food, plate, one, other) => {
          const first = judgePlate({ food, plate, yardstick: yardstickOf(one) }).verdict;
          const both = judgePlate({ food, plate, yardstick: yardstickOf(one, { ...other, id: 'other' }) }).verdict;
          expect(rank.indexOf(both)).toBeGreaterThanOrEqual(rank.indexOf(first));
        },
      ),
    );
  });

  it('[YST-1] beside a companion of E kcal and S mg a food may carry E − S mg more sodium than its own kcal (common practice, no source)', () => {
    const sodiumAgainstEnergy: Test = {
      id: 't',
      measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' },
      basis: 'on-plate',
      atMost: 0,
      source: { kind: 'common-practice', text: '' },
    };
    const figure = fc.integer({ min: 0, max: 900 });
    fc.assert(
      fc.property(figure, figure, figure, figure, (energy, sodium, companionEnergy, companionSodium) => {
        const exact = (energyKcal: number, sodiumMg: number) =>
          withAmounts(plain, { energyKcal: knownExactly(energyKcal, 'printed'), sodiumMg: knownExactly(sodiumMg, 'printed') });
        const plate: Plate = {
          id: 'p',
          title: 'p',
          portion: { servings: 1 },
          companions: [{ food: exact(companionEnergy, companionSodium), portion: { servings: 1 } }],
        };
        const verdict = judgePlate({ food: exact(energy, sodium), plate, yardstick: yardstickOf(sodiumAgainstEnergy) }).verdict;
        expect(verdict).toBe(sodium <= energy + companionEnergy - companionSodium ? 'fits' : 'over');
      }),
    );
  });

  it('[YST-31] the largest portion that fits fits, and a slightly larger one does not', () => {
    let seen = 0;
    fc.assert(
      fc.property(foodOf('Food', known), plateOf(known), testOf(['atMost']), (food, plate, test) => {
        const yardstick = yardstickOf({ ...test, basis: 'on-plate', slack: 0 });
        const share = largestShareThatFits({ food, plate, yardstick });
        const at = (factor: number) =>
          judgePlate({ food, plate: { ...plate, portion: { measure: 'slice', count: 4 * factor } }, yardstick }).verdict;
        if (share < 0.001 || share === 1) return;
        seen += 1;
        expect(at(share)).toBe('fits');
        expect(at(share * 1.001)).not.toBe('fits');
      }),
      { numRuns },
    );
    expect(seen).toBeGreaterThan(numRuns / 30);
  });

  it('[YST-30] every way in fits when judged again, is smaller or larger as it says, and more of the companion is last', () => {
    let seen = 0;
    fc.assert(
      fc.property(
        foodOf('Food', known),
        foodOf('Unsalted', known),
        plateOf(known),
        fc.array(plateOf(known), { maxLength: 3 }),
        testOf(['atMost', 'below']),
        testOf(['atMost', 'atLeast']),
        (food, version, plate, plates, one, other) => {
          const unsalted = { ...version, label: { ...version.label, printed: { ...version.label.printed, unsaltedVersionOf: 'Food' } } };
          const yardstick = yardstickOf(one, { ...other, id: 'other' });
          const { ways, none } = waysIn({ food, plate, yardstick, shelf: { foods: [unsalted], plates } });
          expect(ways.length === 0).toBe(none !== undefined);
          for (const way of ways) {
            seen += 1;
            const again = judgePlate({ food, plate: way.plate, yardstick, ...(way.mixedWith ? { mixedWith: way.mixedWith } : {}) });
            expect(again).toEqual(way.verdict);
            expect(again.verdict).toBe('fits');
          }
          const more = ways.findIndex(({ kind }) => kind === 'more-of-companion');
          if (more >= 0) expect(ways.slice(more).every(({ kind }) => kind === 'more-of-companion')).toBe(true);
        },
      ),
      { numRuns },
    );
    expect(seen).toBeGreaterThan(numRuns / 7);
  });
});
