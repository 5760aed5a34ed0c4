import { describe, expect, test } from 'vitest';
import { nutrientKeys } from '#core/quantity/nutrients.ts';
import type { PrintedLabel, PrintedPanel } from './label.ts';
import { readLabel } from './readLabel.ts';

function read(panel: PrintedPanel, more: Partial<PrintedLabel> = {}) {
  return readLabel({ market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], otherColumns: [], panel, ...more });
}

describe('a label after reading', () => {
  test('[LBL-8] a nutrient without a line is unknown, never zero', () => {
    const { amounts } = read({});
    for (const nutrient of nutrientKeys) expect(amounts[nutrient]).toEqual({ kind: 'unknown', reason: 'not-printed' });
  });

  // 21 CFR 101.9(c)(8)(ii): phosphate additives do not call for a phosphorus line.
  test('[LBL-8] no phosphorus line and a phosphate in the statement: unknown, never 0', () => {
    const { amounts, additives } = read({ sodiumMg: 480 }, { statement: 'WATER, SALT, SODIUM PHOSPHATES.' });
    expect(amounts.phosphorusMg).toEqual({ kind: 'unknown', reason: 'not-printed' });
    expect(additives.some(({ class: kind, counts }) => kind === 'phosphate' && counts)).toBe(true);
  });

  test('[LBL-8] without a statement, additives are unknown: there is no statement to look in', () => {
    expect(read({ sodiumMg: 480 })).not.toHaveProperty('statement');
  });

  // 21 CFR 101.9(c)(8)(iii).
  test('[LBL-7] "not a significant source of potassium" is 0 up to 94 mg, not unknown, and its words are kept', () => {
    const { amounts, asPrinted } = read({}, { notSignificantSourceOf: 'potassium and iron' });
    expect(amounts.potassiumMg).toEqual({ kind: 'known', range: { lo: 0, hi: 94 }, source: 'printed' });
    expect(asPrinted.potassiumMg).toBe('not a significant source of potassium');
  });

  test('[LBL-4] the words of a figure that is judged as a range are kept for sentences', () => {
    const { asPrinted } = read({ potassiumMg: '0 mg 0%', phosphorusMg: '20%', fiberG: '<1 g', sodiumMg: '230 mg', proteinG: 'O g' });
    expect(asPrinted).toEqual({ potassiumMg: '0 mg 0%', phosphorusMg: '20%', fiberG: '<1 g', proteinG: 'O g' });
  });

  // 21 CFR 101.13(b), 101.54-101.62: no definition of "low potassium" exists.
  test('[LBL-8] "low potassium" on the front is kept as words and gives no number', () => {
    const label = read({}, { front: ['low potassium'] });
    expect(label.amounts.potassiumMg).toEqual({ kind: 'unknown', reason: 'not-printed' });
    expect(label.printed.front).toEqual(['low potassium']);
  });

  test('[LBL-3] a figure that cannot be read is unknown, with an issue that names its place', () => {
    const { amounts, issues } = read({ sodiumMg: 'O mg' });
    expect(amounts.sodiumMg).toEqual({ kind: 'unknown', reason: 'not-legible' });
    expect(issues.map(({ code, place }) => [code, place.heading])).toEqual([['figure-letter-for-digit', 'panel.sodiumMg']]);
  });
});

describe('what the amounts are for', () => {
  test('[LBL-11] a US panel of "4 slices (56 g)"', () => {
    const label = read({}, { serving: { household: '4 slices', grams: 56 } });
    expect(label.amountsFor).toEqual({ servings: 1, grams: 56, household: { count: 4, measure: 'slice' } });
    expect(label.servingGrams).toEqual({ lo: 55.5, hi: 56.5 });
  });

  test('[LBL-11] an EU panel per 100 g with a portion of 30 g', () => {
    const label = read({}, { market: 'eu', basis: 'per-100-g', serving: { household: '2 slices', grams: 30 } });
    expect(label.amountsFor).toMatchObject({ grams: 100, servings: expect.closeTo(100 / 30, 9) });
    expect(label.amountsFor.household).toEqual({ measure: 'slice', count: expect.closeTo(200 / 30, 9) });
    expect(read({}, { market: 'eu', basis: 'per-100-ml' }).amountsFor).toEqual({ milliliters: 100 });
  });
});

describe('EU and UK panels', () => {
  const eu = (panel: PrintedPanel) => read(panel, { market: 'eu', basis: 'per-100-g' });

  // Regulation (EU) 1169/2011, Annex I: salt is sodium times 2.5.
  test('[LBL-9] 1,2 g of salt is 480 mg of sodium', () => {
    expect(eu({ saltG: '1,2 g' }).amounts.sodiumMg).toEqual({
      kind: 'known',
      printed: 480,
      range: { lo: 460, hi: 500 },
      source: 'computed',
    });
  });
  // Regulation (EU) 1169/2011, Annex XIV: kJ and kcal go by separate factors, so kJ ÷ kcal runs from 4.0 to 4.33.
  test('[LBL-9] energy printed in kJ alone is a computed range of kcal, wider than its rounding', () => {
    const { amounts, asPrinted } = eu({ energyKj: '1 200 kJ' });
    expect(amounts.energyKcal).toMatchObject({ kind: 'known', source: 'computed' });
    if (amounts.energyKcal.kind !== 'known') throw new Error('known');
    expect(amounts.energyKcal.range.lo).toBeCloseTo(1199.5 / 4.33, 6);
    expect(amounts.energyKcal.range.hi).toBeCloseTo(1200.5 / 4, 6);
    expect(amounts.energyKcal.printed).toBeCloseTo(286.8, 1);
    expect(asPrinted.energyKcal).toBe('1 200 kJ');
  });

  // Commission guidance of December 2012, rounding of salt; derived.
  test('[LBL-9] salt "0,80 g" is 318 to 322 mg of sodium, "0,8 g" 300 to 340 mg', () => {
    expect(eu({ saltG: '0,80 g' }).amounts.sodiumMg).toMatchObject({ printed: 320, range: { lo: 318, hi: 322 } });
    expect(eu({ saltG: '0,8 g' }).amounts.sodiumMg).toMatchObject({ printed: 320, range: { lo: 300, hi: 340 } });
  });

  test('[LBL-9] kilojoules alone give kilocalories', () => {
    expect(eu({ energyKj: 1000 }).amounts.energyKcal).toMatchObject({ printed: expect.closeTo(239.006, 3) });
    expect(eu({ energyKj: 1000, energyKcal: 238 }).amounts.energyKcal).toMatchObject({ printed: 238 });
  });

  // Regulation (EU) 1169/2011, Annex I: carbohydrate is what is metabolized, so fiber is apart.
  test('[LBL-9] carbohydrate and fiber are added where both are printed, else the figure stands and says so', () => {
    expect(eu({ carbohydrateG: 60, fiberG: 10 }).amounts.carbohydrateG).toEqual({
      kind: 'known',
      printed: 70,
      range: { lo: 69, hi: 71 },
      source: 'computed',
    });
    expect(eu({ carbohydrateG: '<0,5 g' }).asPrinted.carbohydrateG).toBe('<0,5 g, without fiber');
    const without = eu({ carbohydrateG: 60 });
    expect(without.amounts.carbohydrateG).toMatchObject({ printed: 60, source: 'printed' });
    expect(without.asPrinted.carbohydrateG).toBe('60 g, without fiber');
  });
});
