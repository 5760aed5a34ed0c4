import { expect, it } from 'vitest';
import { openHighsSolver } from '#adapters/solver/highsSolver.ts';
import type { PrintedPanel } from '#core/label/label.ts';
import { estimateMinerals } from './estimateMinerals.ts';
import type { MineralEstimate } from './minerals.ts';
import { labelOf } from './recipeFixture.ts';

const solver = await openHighsSolver();

/** Of a serving of 100 g, printed in whole grams: 99.5 to 100.5. */
function estimate(statement: string, panel: PrintedPanel): MineralEstimate {
  const found = estimateMinerals(labelOf(statement, 100, panel), solver);
  if (found.kind !== 'estimate') throw new Error(found.because);
  return found;
}
const sweetWater: PrintedPanel = { fatG: 0, carbohydrateG: 10, proteinG: 0 };
/** Na2HPO4: 30.974 of 141.957 g/mol (IUPAC 2021). */
const phosphorusPerGram = 1000 * (30.974 / 141.957);

it('[RCP-11] behind an ingredient that has a ceiling, a phosphate is held by the order', () => {
  const { limits } = estimate('Sugar, corn meal, annatto, disodium phosphate.', { carbohydrateG: 90 });
  // Of annatto there is at most 1 g in 100 (own decision).
  expect(limits).toEqual([
    {
      name: 'disodium phosphate',
      atMostMg: expect.closeTo(1.005 * phosphorusPerGram, 1),
      because: 'it stands after annatto in the statement',
    },
  ]);
});

it('[RCP-11] behind a low threshold, a phosphate is held by it', () => {
  const { limits } = estimate('Water, sugar, contains 0.1% or less of disodium phosphate.', sweetWater);
  expect(limits[0]!.because).toBe('the statement says that it is 0.1% or less');
  // A thousandth of what went in: the serving, and at most a quarter of it as water that left.
  expect(limits[0]!.atMostMg).toBeGreaterThan(0.1005 * phosphorusPerGram);
  expect(limits[0]!.atMostMg).toBeLessThan(0.1005 * 1.25 * phosphorusPerGram);
});

it('[RCP-11] two phosphates at most are told of, each with its own ceiling before that of all', () => {
  const { limits, addedPhosphorus } = estimate(
    'Water, sugar, disodium phosphate, sodium tripolyphosphate, tricalcium phosphate.',
    sweetWater,
  );
  expect(limits.map(({ name }) => name)).toEqual(['disodium phosphate', 'sodium tripolyphosphate']);
  // In a drink 0.25 g of one, 0.35 g of both in 100 g, and the second stands behind the first: 0.175 g.
  expect(limits[0]!.atMostMg).toBeCloseTo(1.005 * 0.25 * phosphorusPerGram, 1);
  // Na5P3O10: 3 × 30.974 of 367.864 g/mol.
  expect(limits[1]!.atMostMg).toBeCloseTo(1.005 * 0.175 * 1000 * (92.922 / 367.864), 1);
  expect(addedPhosphorus.sure.hi).toBeGreaterThan(limits[0]!.atMostMg);
});

it('[RCP-10] only additives add potassium, and only phosphates phosphorus', () => {
  const none = { sure: { lo: 0, hi: 0 }, likely: { lo: 0, mid: 0, hi: 0 } };
  const citrate = estimate('Water, sugar, potassium citrate.', sweetWater);
  expect(citrate.addedPhosphorus).toEqual(none);
  expect(citrate.addedPotassium.sure.lo).toBe(0);
  expect(citrate.addedPotassium.sure.hi).toBeGreaterThan(100);
  expect(citrate.addedPotassium.likely.mid).toBeGreaterThan(10);
  expect(estimate('Water, sugar, sodium citrate.', sweetWater).addedPotassium).toEqual(none);
  expect(estimate('Water, bananas, sugar.', { fatG: 0, carbohydrateG: 15, proteinG: 0 }).addedPotassium).toEqual(none);
});

it('[RCP-12] of a phosphate alone nine tenths or more are absorbed', () => {
  const { absorbedPhosphorus, phosphorus, addedPhosphorus } = estimate('Water, sugar, disodium phosphate.', sweetWater);
  expect(absorbedPhosphorus.lo).toBeGreaterThanOrEqual(0.9 * addedPhosphorus.likely.lo - 1e-9);
  expect(absorbedPhosphorus.lo).toBeLessThanOrEqual(0.9 * phosphorus.likely.lo + 1e-9);
  expect(absorbedPhosphorus.hi).toBeGreaterThanOrEqual(addedPhosphorus.likely.hi - 1e-9);
  expect(absorbedPhosphorus.hi).toBeLessThanOrEqual(phosphorus.likely.hi + 1e-9);
});

it('what brings most is told first: five at most, each a twentieth of the whole or more', () => {
  const { phosphorusDrivers, potassiumDrivers } = estimate('Wheat flour, sugar, milk, eggs, butter, raisins, walnuts.', {
    fatG: 14,
    carbohydrateG: 55,
    proteinG: 7,
  });
  for (const drivers of [phosphorusDrivers, potassiumDrivers]) {
    expect(drivers.length).toBe(5);
    expect(drivers.map(({ mg }) => mg)).toEqual(drivers.map(({ mg }) => mg).toSorted((a, b) => b - a));
    expect(drivers.every(({ share }) => share >= 0.05)).toBe(true);
    const whole = drivers[0]!.mg / drivers[0]!.share;
    for (const { mg, share } of drivers) expect(mg / share).toBeCloseTo(whole, 6);
    expect(drivers.reduce((sum, { share }) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-9);
  }
  expect(phosphorusDrivers[0]!.name).toBe('Wheat flour');
});

it('the share of the mass that is known leaves out what nobody knows', () => {
  const { matchedShare, phosphorusDrivers } = estimate('Milk, zantle.', { fatG: 3, carbohydrateG: 5, proteinG: 3 });
  // Milk stands first, so it is half at least.
  expect(matchedShare).toBeGreaterThan(0.5);
  expect(matchedShare).toBeLessThan(1);
  expect(phosphorusDrivers.map(({ name }) => name)).toEqual(['Milk', 'zantle']);
  expect(estimate('Water, sugar, sodium citrate, citric acid.', sweetWater).matchedShare).toBe(1);
});
