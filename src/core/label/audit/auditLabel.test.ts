import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { usDeclaredDailyValuePercent, usDeclaredFigure } from '#core/label/figure/declaredFigure.ts';
import { usRange } from '#core/label/figure/usRange.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { nearest } from '#core/quantity/rounding.ts';
import type { FindingCode, Market, PrintedColumn, PrintedFigure, PrintedLabel, PrintedPanel } from '../label.ts';
import { readLabel } from '../readLabel.ts';
import { type EnergyGrams, usEnergyEnvelope } from './auditEnergy.ts';
import { gtinCheckDigit } from './gtin.ts';

const runs = process.env.PLATEWRIGHT_LONG ? 100_000 : 300;

function label(panel: PrintedPanel, more: Partial<PrintedLabel> = {}): PrintedLabel {
  return { market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], otherColumns: [], panel, ...more };
}

function findings(panel: PrintedPanel, more: Partial<PrintedLabel> = {}): readonly [FindingCode, string][] {
  return readLabel(label(panel, more)).findings.map(({ code, about }) => [code, about]);
}

describe('energy', () => {
  const printed = (energyKcal: number, proteinG: number, carbohydrateG: number, fatG: number, more: PrintedPanel = {}) =>
    findings({ energyKcal, proteinG, carbohydrateG, fatG, fiberG: 0, ...more }, { statement: 'OATS, SALT.' });

  const grams = (protein: number, carbohydrate: number, fat: number): EnergyGrams => ({
    protein: usRange('proteinG', protein, 1),
    carbohydrate: usRange('carbohydrateG', carbohydrate, 1),
    fat: usRange('fatG', fat, 1),
    mayHideSweeteners: false,
  });

  // 21 CFR 101.9(c)(1)(i)(B), (C): derived from the printed ranges.
  test('[LBL-14] protein 3, carbohydrate 27, fiber 2, fat 2.5 g go with 130, 140 and 150 kcal', () => {
    const envelope = usEnergyEnvelope({ ...grams(3, 27, 2.5), fiber: usRange('fiberG', 2, 1) });
    expect(envelope).toEqual({ lo: 126.25, hi: 148.75 });
    const fits = [110, 120, 130, 140, 150, 160, 170].filter(kcal => {
      const { lo, hi } = usRange('energyKcal', kcal, 1);
      return lo < envelope.hi && hi > envelope.lo;
    });
    expect(fits).toEqual([130, 140, 150]);
    for (const kcal of fits) expect(printed(kcal, 3, 27, 2.5, { fiberG: 2 })).toEqual([]);
  });

  // 21 CFR 101.9(c)(1)(i)(F): erythritol 0, sorbitol 2.6 kcal per g; by (B) all carbohydrate counts 4.
  test('[LBL-14] 12 g of carbohydrate with 10 g of a sugar alcohol may print as 10, 35 or 50 kcal', () => {
    for (const kcal of [10, 35, 50]) expect(printed(kcal, 0, 12, 0, { sugarAlcoholG: 10 })).toEqual([]);
    expect(usDeclaredFigure('energyKcal', 4 * 2)).toBe(10);
    expect(usDeclaredFigure('energyKcal', 4 * 2 + 2.6 * 10)).toBe(35);
  });

  test('[LBL-14] all grams 0 go with 10 kcal (derived: they can carry up to 8.5)', () => {
    expect(printed(10, 0, 0, 0)).toEqual([]);
    expect(usEnergyEnvelope(grams(0, 0, 0)).hi).toBe(8.5);
  });

  test('[LBL-14] an energy that no factor gives is told, too high and too low', () => {
    expect(printed(210, 3, 27, 2.5)).toEqual([['energy-does-not-add-up', 'energyKcal']]);
    expect(printed(80, 3, 27, 2.5)).toEqual([['energy-does-not-add-up', 'energyKcal']]);
  });

  test('[LBL-14] carbohydrate may be fiber where no fiber is printed, and a sweetener where the statement names one', () => {
    expect(findings({ energyKcal: 30, proteinG: 3, carbohydrateG: 27, fatG: 0 }, { statement: 'OATS.' })).toEqual([]);
    expect(findings({ energyKcal: 30, proteinG: 3, carbohydrateG: 27, fatG: 0, fiberG: 0 }, { statement: 'MALTITOL.' })).toEqual([]);
    expect(findings({ energyKcal: 30, proteinG: 3, carbohydrateG: 27, fatG: 0, fiberG: 0 }, { statement: 'OATS.' })).toHaveLength(1);
    expect(findings({ energyKcal: 30, proteinG: 3, carbohydrateG: 27, fatG: 0, totalSugarsG: 25 })).toHaveLength(1);
  });

  test('[LBL-14] alcohol is on no panel, so a drink that may hold it is not checked upward', () => {
    expect(findings({ energyKcal: 120, proteinG: 0, carbohydrateG: 4, fatG: 0 }, { name: 'Red table wine' })).toEqual([]);
  });

  // Regulation (EU) 1169/2011, Annex XIV: 4·8 + 4·60 + 9·5 + 2·10 = 337 kcal.
  test('[LBL-14] EU energy is checked by the EU factors, fiber apart from carbohydrate', () => {
    const eu = (energyKcal: number) =>
      findings(
        { energyKcal, proteinG: 8, carbohydrateG: 60, fatG: 5, fiberG: 10 },
        { market: 'eu', basis: 'per-100-g', statement: 'Oats.' },
      );
    expect(eu(337)).toEqual([]);
    expect(eu(200)).toEqual([['energy-does-not-add-up', 'energyKcal']]);
    expect(eu(700)).toEqual([['energy-does-not-add-up', 'energyKcal']]);
  });

  test('[LBL-14] kilojoules and kilocalories go together by 4.0 to 4.33', () => {
    const eu = (energyKj: number) => findings({ energyKj, energyKcal: 337 }, { market: 'eu', basis: 'per-100-g' });
    for (const kj of [1348, 1410, 1426, 1459]) expect(eu(kj)).toEqual([]);
    expect(eu(1650)).toEqual([['figures-disagree', 'energyKj']]);
  });
});

describe('parts and wholes', () => {
  test.each<[PrintedPanel, string]>([
    [{ fatG: 2, saturatedFatG: 3 }, 'fatG'],
    [{ fatG: 2, saturatedFatG: 1.5, transFatG: 1.5 }, 'fatG'],
    [{ carbohydrateG: 10, fiberG: 5, totalSugarsG: 7 }, 'carbohydrateG'],
    [{ totalSugarsG: 3, addedSugarsG: 5 }, 'totalSugarsG'],
  ])('[LBL-15] %j: parts larger than %s', (panel, about) => {
    expect(findings(panel)).toEqual([['part-larger-than-whole', about]]);
  });

  test.each<PrintedPanel>([
    { fatG: 0, saturatedFatG: 0.5 },
    { fatG: 1.5, saturatedFatG: 1, transFatG: 0.5 },
    { carbohydrateG: 10, fiberG: 4, totalSugarsG: 7 },
    { carbohydrateG: 0, fiberG: '<1 g', totalSugarsG: '<1 g' },
    { totalSugarsG: 3, addedSugarsG: 4 },
  ])('[LBL-15] %j: rounding explains it', panel => {
    expect(findings(panel)).toEqual([]);
  });

  test('[LBL-15] EU fiber is no part of carbohydrate', () => {
    expect(findings({ carbohydrateG: 3, fiberG: 9 }, { market: 'eu', basis: 'per-100-g' })).toEqual([]);
    expect(findings({ carbohydrateG: 3, totalSugarsG: 9 }, { market: 'eu', basis: 'per-100-g' })).toEqual([
      ['part-larger-than-whole', 'carbohydrateG'],
    ]);
  });

  test('[LBL-15] macronutrients weigh no more than the serving, a prepared food excepted', () => {
    const panel = { fatG: 20, carbohydrateG: 20, proteinG: 20 };
    expect(findings(panel, { serving: { grams: 50 } })).toEqual([['part-larger-than-whole', 'serving']]);
    expect(findings(panel, { serving: { grams: 60 } })).toEqual([]);
    expect(findings(panel, { serving: { grams: 50 }, state: 'as-prepared' })).toEqual([]);
    expect(findings(panel, { serving: { milliliters: 30 } })).toEqual([['part-larger-than-whole', 'serving']]);
  });

  test('[LBL-15] no food holds more than itself, or more than 9 kcal per g', () => {
    expect(findings({ carbohydrateG: 104 }, { market: 'eu', basis: 'per-100-g' })).toEqual([
      ['part-larger-than-whole', 'serving'],
      ['impossible-value', 'carbohydrateG'],
    ]);
    expect(findings({ energyKcal: 150 }, { serving: { grams: 14 } })).toEqual([['impossible-value', 'energyKcal']]);
    expect(findings({ energyKcal: 120, fatG: 14 }, { serving: { grams: 14 } })).toEqual([]);
    expect(findings({ sodiumMg: 3000 }, { serving: { grams: 5 } })).toEqual([['impossible-value', 'sodiumMg']]);
    // Table salt: 39.3 % sodium, 1/4 teaspoon.
    expect(findings({ sodiumMg: 590 }, { serving: { household: '1/4 tsp', grams: 1.5 } })).toEqual([]);
    expect(findings({ saltG: 99.8 }, { market: 'eu', basis: 'per-100-g' })).toEqual([]);
  });
});

describe('prints and %DVs', () => {
  // 21 CFR 101.9(c)(1)-(c)(7), (c)(8)(iii).
  test.each<PrintedPanel>([
    { sodiumMg: 145 },
    { sodiumMg: 3 },
    { sodiumMg: '<5 mg' },
    { energyKcal: 83 },
    { fatG: 2.3 },
    { fatG: 7.5 },
    { cholesterolMg: 12 },
    { proteinG: 2.5 },
    { fiberG: '<2 g' },
    { potassiumMg: '600 mg 13%' },
  ])('[LBL-17] %j is no US print', panel => {
    expect(findings(panel)).toEqual([['not-a-us-print', Object.keys(panel)[0]]]);
    expect(findings(panel, { market: 'uk' })).toEqual([]);
  });

  test.each<PrintedPanel>([
    { potassiumMg: '235 mg 6%' },
    { ironMg: 0.36 },
    { calciumMg: 13 },
    { proteinG: '<1 g' },
    { cholesterolMg: '<5 mg' },
  ])('[LBL-17] %j is a US print', panel => {
    expect(findings(panel)).toEqual([]);
  });

  test('[LBL-16] a %DV that no amount in range gives is told', () => {
    expect(findings({ sodiumMg: '470 mg 22%' })).toEqual([['daily-value-does-not-agree', 'sodiumMg']]);
    expect(findings({ potassiumMg: '470 mg 2%' })).toEqual([['daily-value-does-not-agree', 'potassiumMg']]);
    for (const percent of [20, 21]) expect(findings({ sodiumMg: `470 mg ${percent}%` })).toEqual([]);
  });

  test('[LBL-16] a protein %DV is of corrected protein and is not checked against the grams', () => {
    expect(findings({ proteinG: '13 g 8%' })).toEqual([]);
  });

  // 480 mg is 20 % of 2400 mg, the Daily Value before 2016 (9 CFR 317.309, 381.409).
  test('[LBL-16] percents of the old Daily Values are told once', () => {
    expect(findings({ sodiumMg: '480 mg 20%', carbohydrateG: '30 g 10%' })).toEqual([['old-daily-values', 'sodiumMg']]);
    expect(findings({ sodiumMg: '480 mg 21%', carbohydrateG: '30 g 11%' })).toEqual([]);
  });

  test('[LBL-7] a line that "not a significant source" excludes is told, and the amount is a contradiction', () => {
    const read = readLabel(label({ potassiumMg: 360 }, { notSignificantSourceOf: 'potassium' }));
    expect(read.findings.map(({ code }) => code)).toEqual(['figures-disagree']);
    expect(read.amounts.potassiumMg).toEqual({ kind: 'unknown', reason: 'contradiction' });
  });

  test('[LBL-9] salt and sodium that differ are told', () => {
    expect(findings({ saltG: '1.20', sodiumMg: 480 }, { market: 'uk', basis: 'per-100-g' })).toEqual([]);
    expect(findings({ saltG: '1.20', sodiumMg: 1200 }, { market: 'uk', basis: 'per-100-g' })).toEqual([['figures-disagree', 'saltG']]);
  });
});

describe('serving, columns, bar code, potassium, threshold', () => {
  // 21 CFR 101.9(b)(5)(viii): ounce 28 g, cup 240 mL, tablespoon 15 mL, fluid ounce 30 mL.
  test.each([['2 oz (80 g)'], ['1 oz (56 g)'], ['1 cup (120 mL)'], ['2 Tbsp (60 mL)'], ['12 fl oz (240 mL)'], ['1/4 cup (240 g)']])(
    '[LBL-18] "%s": grams or milliliters do not go with the measure',
    household => {
      expect(findings({}, { serving: { household } })).toEqual([['serving-mass-against-measure', 'serving']]);
      expect(findings({}, { serving: { household }, market: 'ca' })).toEqual([]);
    },
  );

  test.each([
    ['2 oz (56 g)'],
    ['1 oz (30 g)'],
    ['4 oz (113 g)'],
    ['1.5 oz (42 g)'],
    ['1 cup (240 mL)'],
    ['2/3 cup (160 mL)'],
    ['1 cup (8 g)'],
    ['1 cup (340 g)'],
    ['1/4 tsp (1.5 g)'],
    ['1 Tbsp (21 g)'],
    ['12 fl oz (355 mL)'],
    ['4 slices (56 g)'],
  ])('[LBL-18] "%s" is no false alarm', household => {
    expect(findings({}, { serving: { household } })).toEqual([]);
  });

  const column = (panel: PrintedPanel, more: Partial<PrintedColumn> = {}): PrintedColumn => ({
    basis: 'per-serving',
    state: 'as-packaged',
    serving: { household: '1 package', grams: 90 },
    panel,
    ...more,
  });

  test('[LBL-19] a column that is not in proportion is told', () => {
    const columns = (sodiumMg: PrintedFigure, more: Partial<PrintedColumn> = {}) =>
      findings({ sodiumMg: 140 }, { serving: { grams: 30, perContainer: 3 }, otherColumns: [column({ sodiumMg }, more)] });
    for (const mg of [410, 420, 430, 440]) expect(columns(mg)).toEqual([]);
    expect(columns(140)).toEqual([['columns-disagree', 'otherColumns[0]']]);
    expect(columns(140, { state: 'as-prepared' })).toEqual([]);
    expect(columns(900, { serving: { household: '1 container' } })).toEqual([['columns-disagree', 'otherColumns[0]']]);
    expect(columns(900, { serving: { household: '1 bowl' } })).toEqual([]);
    expect(columns(467, { basis: 'per-100-g' })).toEqual([['not-a-us-print', 'otherColumns[0].sodiumMg']]);
  });

  test('[LBL-13] a misread bar code number and one for weighed goods are told', () => {
    expect(findings({}, { gtin: '012345678905' })).toEqual([]);
    expect(findings({}, { gtin: '012345678906' })).toEqual([['gtin-check-digit', 'gtin']]);
    expect(findings({}, { gtin: `20123400567${gtinCheckDigit('20123400567')}` })).toEqual([['gtin-variable-weight', 'gtin']]);
  });

  test('[LBL-20] potassium printed as nothing beside a potassium salt is told', () => {
    const salted = { statement: 'WATER, POTASSIUM CHLORIDE, SALT.' };
    const expected = [['potassium-zero-beside-potassium-salt', 'potassiumMg']];
    expect(findings({ potassiumMg: 0 }, salted)).toEqual(expected);
    expect(findings({ potassiumMg: '0%' }, salted)).toEqual(expected);
    expect(findings({}, { ...salted, notSignificantSourceOf: 'potassium' })).toEqual(expected);
    expect(findings({ potassiumMg: '60 mg 2%' }, salted)).toEqual([]);
    expect(findings({}, salted)).toEqual([]);
    expect(findings({ potassiumMg: 0 }, { statement: 'WATER, SALT.' })).toEqual([]);
  });

  test('[LBL-21] a threshold that the law does not know is told (21 CFR 101.4(a)(2))', () => {
    expect(findings({}, { statement: 'WATER, CONTAINS 3% OR LESS OF: SALT, SUGAR.' })).toEqual([['threshold-not-allowed', 'statement']]);
  });
});

describe('no false alarms', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });

  /** A food as it truly is: grams in a serving, each part within its whole, energy by one of the methods of 21 CFR 101.9(c)(1)(i). */
  const food = fc
    .record({
      grams: fc.oneof(fc.double({ min: 0.5, max: 5, noNaN: true }), fc.double({ min: 5, max: 400, noNaN: true })),
      shares: fc.array(share, { minLength: 6, maxLength: 6 }),
      within: fc.array(share, { minLength: 7, maxLength: 7 }),
      fiberCounts: fc.boolean(),
      polyolKcalPerG: fc.constantFrom(0, 1.6, 2, 2.4, 3),
      // Specific Atwater factors move plant foods down by 5 to 15 % (from memory).
      specificFactors: fc.double({ min: 0.85, max: 1, noNaN: true }),
      percentOfPrinted: fc.boolean(),
    })
    .map(({ grams, shares, within, fiberCounts, polyolKcalPerG, specificFactors, percentOfPrinted }) => {
      const total = shares.reduce((sum, one) => sum + one, 1e-9);
      const [fat, protein, fiber, sugars, polyols] = shares.map(one => (one / total) * grams) as [number, number, number, number, number];
      const starch =
        grams - fat - protein - fiber - sugars - polyols > 0 ? (grams - fat - protein - fiber - sugars - polyols) * within[0]! : 0;
      const carbohydrate = fiber + sugars + polyols + starch;
      const amounts: Partial<Record<Nutrient, number>> = {
        fatG: fat,
        saturatedFatG: fat * within[1]! * 0.9,
        transFatG: fat * 0.1 * within[2]!,
        cholesterolMg: within[3]! * grams * 4,
        sodiumMg: within[4]! * grams * 50,
        carbohydrateG: carbohydrate,
        fiberG: fiber,
        totalSugarsG: sugars,
        addedSugarsG: sugars * within[5]!,
        sugarAlcoholG: polyols,
        proteinG: protein,
        energyKcal:
          specificFactors * (4 * protein + 9 * fat + (fiberCounts ? 4 * carbohydrate : 4 * (sugars + starch) + polyolKcalPerG * polyols)),
        vitaminDMcg: within[6]! * grams * 0.3,
        calciumMg: within[6]! * grams * 15,
        ironMg: within[3]! * grams * 0.3,
        potassiumMg: within[2]! * grams * 20,
      };
      return { grams, amounts, percentOfPrinted };
    });

  function declared(amounts: Partial<Record<Nutrient, number>>, times: number, percentOfPrinted: boolean): PrintedPanel {
    const panel: Partial<Record<Nutrient, PrintedFigure>> = {};
    for (const [key, each] of Object.entries(amounts)) {
      const nutrient = key as Nutrient;
      const figure = usDeclaredFigure(nutrient, each * times);
      const basis = percentOfPrinted && typeof figure === 'number' ? figure : each * times;
      const percent = usDeclaredDailyValuePercent(nutrient, basis);
      const { unit } = nutrients[nutrient];
      const words = typeof figure === 'string' ? figure : `${figure} ${unit}`;
      panel[nutrient] = percent === undefined ? figure : `${words} ${percent}%`;
    }
    return panel;
  }

  /** 21 CFR 101.9(b)(7)(ii). */
  const declaredGrams = (grams: number) => nearest(grams, grams < 2 ? 0.1 : grams < 5 ? 0.5 : 1);

  test('[LBL-17] a food declared by the US rules gives no finding', () => {
    fc.assert(
      fc.property(food, fc.boolean(), ({ grams, amounts, percentOfPrinted }, withStatement) => {
        const read = readLabel(
          label(declared(amounts, 1, percentOfPrinted), {
            serving: { grams: declaredGrams(grams) },
            ...(withStatement ? { statement: 'OATS, SALT.' } : {}),
            otherColumns: [
              {
                basis: 'per-serving',
                state: 'as-packaged',
                serving: { grams: declaredGrams(grams * 3) },
                panel: declared(amounts, 3, percentOfPrinted),
              },
            ],
          }),
        );
        expect(read.findings).toEqual([]);
        expect(read.issues).toEqual([]);
      }),
      { numRuns: runs },
    );
  });

  test('[LBL-15] an EU food declared to tenths gives no finding', () => {
    const tenth = (x: number) => (x >= 10 ? nearest(x, 1) : nearest(x, 0.1));
    fc.assert(
      fc.property(food, fc.constantFrom<Market>('eu', 'uk'), ({ grams, amounts }, market) => {
        const per100 = (key: Nutrient) => ((amounts[key] ?? 0) / grams) * 100;
        const available = per100('carbohydrateG') - per100('fiberG');
        const kcal = 4 * per100('proteinG') + 4 * available + 9 * per100('fatG') + 2 * per100('fiberG');
        const kj = 17 * per100('proteinG') + 17 * available + 37 * per100('fatG') + 8 * per100('fiberG');
        const panel: PrintedPanel = {
          energyKj: nearest(kj, 1),
          energyKcal: nearest(kcal, 1),
          fatG: tenth(per100('fatG')),
          saturatedFatG: tenth(per100('saturatedFatG')),
          carbohydrateG: tenth(available),
          totalSugarsG: tenth(per100('totalSugarsG')),
          fiberG: tenth(per100('fiberG')),
          proteinG: tenth(per100('proteinG')),
          saltG: nearest((per100('sodiumMg') * 2.5) / 1000, 0.01),
        };
        const statement = 'Oats, salt.';
        expect(readLabel(label(panel, { market, basis: 'per-100-g', statement })).findings).toEqual([]);
      }),
      { numRuns: runs },
    );
  });
});
