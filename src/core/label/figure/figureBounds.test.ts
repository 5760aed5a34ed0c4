/** Printed figures at the bounds of each rule, and the words that a finding makes of a range. */
import { describe, expect, test } from 'vitest';
import type { Amount } from '#core/quantity/amount.ts';
import type { Market, PrintedFigure } from '../label.ts';
import type { PanelKey } from '../panelKeys.ts';
import { agreement, dailyValueOf, isPrintablePercent, onlyCurrentAgrees, unroundedPercent } from './dailyValue.ts';
import { usDeclaredDailyValuePercent, usDeclaredFigure } from './declaredFigure.ts';
import { nameOf } from './figure.ts';
import { type PanelBase, printedRange } from './printedRange.ts';
import { readFigure } from './readFigure.ts';
import { sentenceStart, spanText } from './spanText.ts';

function amount(key: PanelKey, printed: PrintedFigure, market: Market = 'us', base?: PanelBase): Amount {
  const { value } = readFigure(key, printed, market, key);
  if (value.kind === 'no-figure') throw new Error(`${printed} was not read`);
  return printedRange(key, value, market, base);
}

const near = (value: number): number => expect.closeTo(value, 9) as number;
const known = (printed: number, lo: number, hi: number): Amount => ({
  kind: 'known',
  printed,
  range: { lo: near(lo), hi: near(hi) },
  source: 'printed',
});
const wholeRange = (lo: number, hi: number): Amount => ({ kind: 'known', range: { lo: near(lo), hi: near(hi) }, source: 'printed' });

describe('US', () => {
  test.each([
    ['fiberG', '3.0 g', 3, 2.5, 3.5],
    ['ironMg', '0.5 mg', 0.5, 0.45, 0.55],
    ['alcoholG', '5 g', 5, 4.5, 5.5],
    ['alcoholG', '5.0 g', 5, 4.95, 5.05],
    ['waterMl', '100 g', 100, 99.5, 100.5],
    ['calciumMg', '25 mg <2%', 25, 24.5, 25.5],
    // Of corrected protein: the percent says nothing of the grams (21 CFR 101.9(c)(7)(ii)).
    ['proteinG', '13 g 8%', 13, 12.5, 13.5],
    ['transFatG', '2 g 10%', 2, 1.75, 2.25],
    // 470 mg are 20.4 %, so 20 % says no more than the amount.
    ['sodiumMg', '470 mg 20%', 470, 465, 475],
  ] as const)('[LBL-4] %s "%s" is %d, range %d to %d', (key, printed, value, lo, hi) => {
    expect(amount(key, printed)).toMatchObject(known(value, lo, hi));
  });

  test('[LBL-7] a line that says "not a significant source" stands for what the law lets it (21 CFR 101.9(c)(8)(iii)); no law says it of salt', () => {
    expect(amount('potassiumMg', 'Not a significant source of potassium')).toEqual(wholeRange(0, 94));
    expect(amount('saltG', 'Not a significant source of salt', 'eu')).toEqual({ kind: 'unknown', reason: 'not-a-number' });
  });

  // 21 CFR 101.9(c)(3): "less than 5 mg" from 2 mg; no other bound has a beginning.
  test.each([
    ['cholesterolMg', '<5 mg', 2, 5],
    ['cholesterolMg', '<3 mg', 0, 3],
    ['fiberG', '<5 g', 0, 5],
  ] as const)('[LBL-4] %s "%s" is %d up to %d', (key, printed, lo, hi) => {
    expect(amount(key, printed)).toEqual(wholeRange(lo, hi));
  });

  // 21 CFR 101.9(c)(5) before 2016: potassium by 5 up to 140, by 10 above, as sodium.
  test('[LBL-4] on a panel of the older Daily Values potassium may be printed as sodium is, calcium may not', () => {
    expect(amount('potassiumMg', 145, 'us', 'before-2016')).toEqual(known(145, 140, 150));
    expect(amount('potassiumMg', 145, 'us')).toEqual(known(145, 144.5, 145.5));
    expect(amount('calciumMg', 145, 'us', 'before-2016')).toEqual(known(145, 144.5, 145.5));
  });

  // 21 CFR 101.9(c)(1)-(c)(7): the first amount that a line does not round to nothing, and the last that "less than" covers.
  test.each([
    ['energyKcal', 5, 5],
    ['cholesterolMg', 2, 'less than 5 mg'],
    ['cholesterolMg', 5.1, 5],
    ['sodiumMg', 5, 5],
    ['proteinG', 0.5, 'less than 1 g'],
    ['proteinG', 1, 1],
    ['alcoholG', 5.24, 5.2],
    ['waterMl', 5.6, 6],
  ] as const)('[LBL-1] %s %d prints as %s', (nutrient, true_, printed) => {
    expect(usDeclaredFigure(nutrient, true_)).toBe(printed);
  });

  test('[LBL-2] 23 and 162 mg of sodium are 1 and 7 % of 2300 mg; an impossible amount is a mistake', () => {
    expect([23, 162].map(mg => usDeclaredDailyValuePercent('sodiumMg', mg))).toEqual([1, 7]);
    expect(() => usDeclaredDailyValuePercent('transFatG', -1)).toThrow(RangeError);
  });
});

describe('%DV', () => {
  // Canada, Table of Daily Values, 20 October 2022; potassium 4700 mg until 31 December 2025. EU and UK have none.
  test.each([
    ['potassiumMg', 'ca', 3400, 4700],
    ['sodiumMg', 'ca', 2300, 2300],
    ['fatG', 'ca', 75, 75],
    ['totalSugarsG', 'ca', 100, 100],
    ['carbohydrateG', 'ca', undefined, undefined],
    ['proteinG', 'ca', undefined, undefined],
    ['addedSugarsG', 'ca', undefined, undefined],
    // 21 CFR 101.9(c)(9), and before 2016 (9 CFR 317.309).
    ['sodiumMg', 'us', 2300, 2400],
    ['potassiumMg', 'us', 4700, 3500],
    ['fatG', 'us', 78, 65],
    ['transFatG', 'us', undefined, undefined],
    ['sodiumMg', 'eu', undefined, undefined],
    ['sodiumMg', 'uk', undefined, undefined],
  ] as const)('[LBL-6] 100 %% of %s in %s is %s, before %s', (nutrient, market, current, before) => {
    expect(dailyValueOf(nutrient, market, 'current')).toBe(current);
    expect(dailyValueOf(nutrient, market, 'before-2016')).toBe(before);
  });

  // 21 CFR 101.9(c)(8)(iii): 10 and 50 are reached by the finer step from below and by the coarser one from above.
  test.each([
    ['potassiumMg', 1, 0, 2],
    ['potassiumMg', 2, 1, 3],
    ['potassiumMg', 10, 9, 12.5],
    ['potassiumMg', 15, 12.5, 17.5],
    ['potassiumMg', 50, 47.5, 55],
    ['potassiumMg', 60, 55, 65],
    ['sodiumMg', 0, 0, 0.5],
    ['sodiumMg', 12, 11.5, 12.5],
  ] as const)('[LBL-5] %s: %d %% printed is %d to %d %%', (nutrient, percent, lo, hi) => {
    expect(unroundedPercent(nutrient, percent)).toEqual({ lo, hi });
  });

  test('[LBL-2] a percent that no rounding gives cannot be printed', () => {
    expect([8, 9, 10, 12, 15, 50, 55, 60].map(percent => isPrintablePercent('ironMg', percent))).toEqual([
      true,
      false,
      true,
      false,
      true,
      true,
      false,
      true,
    ]);
  });

  // 10 % is 9 to 12.5 %, one step (2) around it 7 to 14.5; 50 % is 47.5 to 55 %, one step (5) around it 42.5 to 60.
  test.each([
    [10, 5.5, 6.9, 'contradicts'],
    [10, 5.5, 7.1, 'one-step-off'],
    [10, 14.4, 16, 'one-step-off'],
    [10, 14.6, 16, 'contradicts'],
    [50, 40, 42, 'contradicts'],
    [50, 40, 43, 'one-step-off'],
    [50, 59, 62, 'one-step-off'],
    [50, 61, 62, 'contradicts'],
  ])('[LBL-6] iron at %d %% beside %d to %d %% of 18 mg: %s', (percent, lo, hi, expected) => {
    expect(agreement('ironMg', { lo: lo * 0.18, hi: hi * 0.18 }, percent, 'us')).toBe(expected);
  });

  test('[LBL-6] what has no Daily Value, and protein, agrees with any percent', () => {
    expect(agreement('proteinG', { lo: 1, hi: 2 }, 90, 'us')).toBe('agrees');
    expect(agreement('sodiumMg', { lo: 1, hi: 2 }, 90, 'eu')).toBe('agrees');
  });

  // 475 to 485 mg are 20.7 to 21.1 % of 2300 mg, 19.8 to 20.2 % of 2400 mg.
  test('[LBL-6] only today’s Daily Value explains 480 mg at 21 %', () => {
    const of480 = { lo: 475, hi: 485 };
    expect(onlyCurrentAgrees('sodiumMg', of480, 21, 'us')).toBe(true);
    expect(onlyCurrentAgrees('sodiumMg', of480, 20, 'us')).toBe(false);
    expect(onlyCurrentAgrees('sodiumMg', of480, 40, 'us')).toBe(false);
    expect(onlyCurrentAgrees('sodiumMg', of480, 21, 'eu')).toBe(false);
    // 12.5 to 13.5 g are 25 to 27 % of 50 g.
    expect(onlyCurrentAgrees('proteinG', { lo: 12.5, hi: 13.5 }, 26, 'us')).toBe(false);
    expect(onlyCurrentAgrees('transFatG', { lo: 1, hi: 2 }, 5, 'us')).toBe(false);
  });
});

describe('EU and UK', () => {
  // Commission guidance on tolerances, December 2012, rounding table: up to what amount "0" may be printed.
  test.each([
    ['fatG', 0.5],
    ['saturatedFatG', 0.1],
    ['carbohydrateG', 0.5],
    ['totalSugarsG', 0.5],
    ['sugarAlcoholG', 0.5],
    ['fiberG', 0.5],
    ['proteinG', 0.5],
    ['saltG', 0.0125],
    // 0.0125 g of salt hold 5 mg of sodium.
    ['sodiumMg', 5],
    ['energyKj', 0.0005],
  ] as const)('[LBL-9] %s "0.000" is up to %d', (key, hi) => {
    for (const market of ['eu', 'uk'] as const) expect(amount(key, '0.000', market)).toEqual(known(0, 0, hi));
  });

  // The same table: three significant figures, two for iron and vitamin D.
  test.each([
    ['potassiumMg', '12345', 12345, 12295, 12395],
    ['calciumMg', '1234', 1234, 1229, 1239],
    ['phosphorusMg', '1234', 1234, 1229, 1239],
    ['magnesiumMg', '1234', 1234, 1229, 1239],
    ['ironMg', '1.2345', 1.2345, 1.1845, 1.2845],
    ['vitaminDMcg', '1.2345', 1.2345, 1.1845, 1.2845],
    ['sodiumMg', '140', 140, 139.5, 140.5],
  ] as const)('[LBL-9] %s "%s" is %d, range %d to %d', (key, printed, value, lo, hi) => {
    for (const market of ['eu', 'uk'] as const) expect(amount(key, printed, market)).toEqual(known(value, lo, hi));
  });

  test('[LBL-9] only "<0.01 g" of salt reaches further than it says', () => {
    expect(amount('saltG', '<0.01 g', 'uk')).toEqual(wholeRange(0, 0.0125));
    expect(amount('saltG', '<0.5 g', 'uk')).toEqual(wholeRange(0, 0.5));
    expect(amount('fatG', '<0.01 g', 'uk')).toEqual(wholeRange(0, 0.01));
  });
});

describe('Canada', () => {
  // Tables to B.01.401 from memory, as in the sheet: potassium under 50 by 10, under 250 by 25, above by 50 mg; iron by 0.25 and 0.5 mg.
  test.each([
    ['potassiumMg', '10', 10, 5, 15],
    ['potassiumMg', '225', 225, 212.5, 237.5],
    ['potassiumMg', '350', 350, 325, 375],
    // Off the bands: as fine as the last place, or the older steps of 5 and 10.
    ['potassiumMg', '45', 45, 42.5, 47.5],
    ['potassiumMg', '60', 60, 57.5, 62.5],
    ['potassiumMg', '275', 275, 270, 280],
    ['ironMg', '0', 0, 0, 0.05],
    ['ironMg', '0.25', 0.25, 0.245, 0.255],
    ['ironMg', '0.5', 0.5, 0.375, 0.625],
    ['ironMg', '1.3', 1.3, 1.25, 1.35],
    ['ironMg', '2.25', 2.25, 2.125, 2.375],
    ['ironMg', '2.5', 2.5, 2.25, 2.75],
    ['ironMg', '2.75', 2.75, 2.745, 2.755],
    ['ironMg', '3.0', 3, 2.75, 3.25],
    ['ironMg', '3', 3, 2.5, 3.5],
    ['ironMg', '1', 1, 0.5, 1.5],
    ['fatG', '0.0', 0, 0, 0.5],
    ['fatG', '0.5', 0.5, 0.5, 0.75],
    ['fatG', '2.5', 2.5, 2.25, 2.75],
    ['alcoholG', '5', 5, 4.5, 5.5],
  ] as const)('[LBL-10] %s "%s" is %d, range %d to %d', (key, printed, value, lo, hi) => {
    expect(amount(key, printed, 'ca')).toEqual(known(value, lo, hi));
  });
});

describe('words of a finding', () => {
  test('a range is rounded outward, one value to two decimals, an open end is "or more"', () => {
    expect(spanText({ lo: 126.25, hi: 148.75 }, 'kcal')).toBe('126.2 to 148.8 kcal');
    expect(spanText({ lo: 2.256, hi: 2.256 }, 'g')).toBe('2.26 g');
    expect(spanText({ lo: 4.55, hi: Number.POSITIVE_INFINITY }, 'g')).toBe('4.5 g or more');
  });

  test('names are listed as a sentence begins', () => {
    expect([[], ['fat'], ['fat', 'sodium'], ['fat', 'sodium', 'salt']].map(sentenceStart)).toEqual([
      '',
      'Fat',
      'Fat and sodium',
      'Fat, sodium and salt',
    ]);
    expect((['saltG', 'energyKj', 'sodiumMg'] as const).map(nameOf)).toEqual(['salt', 'energy in kJ', 'sodium']);
  });
});
