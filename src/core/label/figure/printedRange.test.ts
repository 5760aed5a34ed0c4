import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPanel } from '#core/label/panel/readPanel.ts';
import type { Amount } from '#core/quantity/amount.ts';
import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import type { Market, PrintedFigure } from '../label.ts';
import type { PanelKey } from '../panelKeys.ts';
import { agreement } from './dailyValue.ts';
import { usDeclaredDailyValuePercent, usDeclaredFigure } from './declaredFigure.ts';
import { ownAmount, printedRange } from './printedRange.ts';
import { readFigure } from './readFigure.ts';

const runs = process.env.PLATEWRIGHT_LONG ? 100_000 : 300;

function amount(key: PanelKey, printed: PrintedFigure, market: Market = 'us'): Amount {
  const { value } = readFigure(key, printed, market, key);
  if (value.kind === 'no-figure') throw new Error(`${printed} was not read`);
  return printedRange(key, value, market);
}

const known = (printed: number, lo: number, hi: number): Amount => ({ kind: 'known', printed, range: { lo, hi }, source: 'printed' });
const wholeRange = (lo: number, hi: number): Amount => ({ kind: 'known', range: { lo, hi }, source: 'printed' });

describe('a US figure stands for a range', () => {
  // Inverse of the rounding in 21 CFR 101.9(c)(1)-(c)(7), derived; half-open ends closed outward.
  test.each([
    ['sodiumMg', 0, 0, 5],
    ['sodiumMg', 5, 5, 7.5],
    ['sodiumMg', 10, 7.5, 12.5],
    ['sodiumMg', 135, 132.5, 137.5],
    ['sodiumMg', 140, 137.5, 145],
    ['sodiumMg', 150, 145, 155],
    ['fatG', 0, 0, 0.5],
    ['fatG', 0.5, 0.5, 0.75],
    ['fatG', 2.5, 2.25, 2.75],
    ['saturatedFatG', 5, 4.75, 5.5],
    ['transFatG', 6, 5.5, 6.5],
    ['cholesterolMg', 0, 0, 2.5],
    ['cholesterolMg', 5, 2.5, 7.5],
    ['cholesterolMg', 30, 27.5, 32.5],
    ['carbohydrateG', 0, 0, 0.5],
    ['fiberG', 1, 0.5, 1.5],
    ['proteinG', 13, 12.5, 13.5],
    ['energyKcal', 0, 0, 5],
    ['energyKcal', 5, 2.5, 7.5],
    ['energyKcal', 45, 42.5, 47.5],
    ['energyKcal', 50, 47.5, 55],
    ['energyKcal', 60, 55, 65],
  ] as const)('[LBL-4] %s %d is compared as printed, range %d to %d', (key, printed, lo, hi) => {
    expect(amount(key, printed)).toEqual(known(printed, lo, hi));
  });

  // 21 CFR 101.9(c)(3), (c)(6): the bound is all that is said, so the whole range is judged.
  test.each([
    ['proteinG', 'less than 1 g', 0, 1],
    ['fiberG', '<1 g', 0, 1],
    ['cholesterolMg', 'less than 5 mg', 2, 5],
  ] as const)('[LBL-4] %s "%s" is judged as a whole range', (key, printed, lo, hi) => {
    expect(amount(key, printed)).toEqual(wholeRange(lo, hi));
  });

  // 21 CFR 101.9(c)(8)(iii): under 2 % of the Daily Value may print as zero.
  test.each([
    ['potassiumMg', 94],
    ['phosphorusMg', 25],
    ['calciumMg', 26],
    ['ironMg', 0.36],
  ] as const)('[LBL-4] printed %s 0 is a range up to %d, not zero', (key, hi) => {
    for (const printed of [0, '0 mg', '0%', '0 mg 0%', '*']) expect(amount(key, printed)).toEqual(wholeRange(0, hi));
  });

  // FDA guidance on quantitative amounts: by 10 from a Daily Value of 250 up (from memory), by 0.1 under 25; finer prints are finer.
  test.each([
    ['potassiumMg', 470, 465, 475],
    ['potassiumMg', 235, 234.5, 235.5],
    ['ironMg', 1.3, 1.25, 1.35],
    ['ironMg', 8, 7.5, 8.5],
  ] as const)('[LBL-4] %s %d is %d to %d', (key, printed, lo, hi) => {
    expect(amount(key, printed)).toEqual(known(printed, lo, hi));
  });

  test('[LBL-4] 145 mg of sodium is no US print, so it is taken to be as coarse as its neighbors', () => {
    expect(amount('sodiumMg', 145)).toEqual(known(145, 140, 150));
  });

  test('[LBL-4] a converted figure is as coarse as the unit it was printed in', () => {
    expect(amount('sodiumMg', '0.47 g')).toEqual(known(470, 465, 475));
    expect(amount('sodiumMg', '0.5 g')).toEqual(known(500, 450, 550));
  });
});

describe('%DV', () => {
  // 21 CFR 101.9(c)(8)(iii) on Daily Values of 4700, 1250 and 1300 mg (phosphorus from memory); derived.
  test.each([
    ['potassiumMg', 0, 0, 94],
    ['potassiumMg', 2, 47, 141],
    ['potassiumMg', 4, 141, 235],
    ['potassiumMg', 6, 235, 329],
    ['potassiumMg', 8, 329, 423],
    ['potassiumMg', 10, 423, 587.5],
    ['potassiumMg', 15, 587.5, 822.5],
    ['potassiumMg', 20, 822.5, 1057.5],
    ['potassiumMg', 50, 2232.5, 2585],
    ['potassiumMg', 60, 2585, 3055],
    ['phosphorusMg', 2, 12.5, 37.5],
    ['phosphorusMg', 10, 112.5, 156.25],
    ['phosphorusMg', 20, 218.75, 281.25],
    ['calciumMg', 10, 117, 162.5],
  ] as const)('[LBL-5] %s %d%% alone is judged as the range %d to %d', (key, percent, lo, hi) => {
    const read = amount(key, `${percent}%`);
    expect(read).toEqual(wholeRange(expect.closeTo(lo, 9), expect.closeTo(hi, 9)));
  });

  test('[LBL-5] a sodium %DV alone may be of the printed or of the unrounded amount', () => {
    // 6 % of 2300 is 126.5 to 149.5 mg; the prints in it, 130 to 145, reach no further (101.9(d)(7)(ii)).
    expect(amount('sodiumMg', '6%')).toEqual(wholeRange(126.5, 149.5));
    // 20 % is 448.5 to 471.5 mg; 470 mg (20.4 %) is printed up to 475 mg.
    expect(amount('sodiumMg', '20%')).toEqual(wholeRange(expect.closeTo(445, 9), 475));
  });

  test('[LBL-5] a protein %DV is of protein corrected for quality, so it is only a lower bound of the grams', () => {
    // 9.5 % of 50 g is 4.75 g; the print 5 g (10 %) begins at 4.5 g.
    expect(amount('proteinG', '10%')).toEqual(wholeRange(4.5, Number.POSITIVE_INFINITY));
  });

  test('[LBL-5] a percent alone is unknown where the market has no Daily Value for it', () => {
    expect(amount('potassiumMg', '10%', 'eu')).toEqual({ kind: 'unknown', reason: 'not-printed' });
    expect(amount('transFatG', '10%')).toEqual({ kind: 'unknown', reason: 'not-printed' });
    expect(readPanel({ potassiumMg: '10%' }, 'eu').issues.map(({ code }) => code)).toEqual(['percent-without-amount']);
  });

  test('[LBL-6] amount and %DV are intersected', () => {
    expect(amount('potassiumMg', '470 mg 10%')).toEqual(known(470, 465, 475));
    // 21 % of 2300 mg begins at 471.5 mg; the printed number stays in its range.
    expect(amount('sodiumMg', '470 mg 21%')).toEqual(known(470, 470, 475));
    // 10 % of iron begins at 9 % = 1.62 mg.
    expect(amount('fiberG', '<1 g 2%')).toEqual(wholeRange(expect.closeTo(0.42, 9), expect.closeTo(0.7, 9)));
  });

  test.each([
    [18, 'contradicts'],
    [19, 'agrees-before-2016'],
    [20, 'agrees'],
    [21, 'agrees'],
    [22, 'one-step-off'],
    [24, 'contradicts'],
  ])('[LBL-6] sodium 470 mg with %d percent: %s (21 CFR 101.9(d)(7)(ii), derived)', (percent, expected) => {
    expect(agreement('sodiumMg', { lo: 465, hi: 475 }, percent, 'us')).toBe(expected);
  });

  test('[LBL-6] a percent one step off leaves the amount; a contradiction makes it unknown', () => {
    expect(amount('sodiumMg', '470 mg 22%')).toEqual(known(470, 465, 475));
    expect(amount('sodiumMg', '470 mg 2%')).toEqual({ kind: 'unknown', reason: 'contradiction' });
    expect(amount('potassiumMg', '0 mg 10%')).toEqual({ kind: 'unknown', reason: 'contradiction' });
  });

  // 9 CFR 317.309, 381.409: sodium 2400 mg and potassium 3500 mg before 2016; 480 mg is 20 % of the old and 20.9 % of the present one.
  test('[LBL-6] 480 mg at 20 % is of the old Daily Value, at 21 % of the present one', () => {
    expect(readPanel({ sodiumMg: '480 mg 20%' }, 'us').base).toBe('before-2016');
    expect(readPanel({ sodiumMg: '480 mg 21%' }, 'us').base).toBe('current');
    expect(amount('sodiumMg', '480 mg 20%')).toEqual(known(480, 475, 485));
  });

  test('[LBL-6] a %DV alone follows the Daily Values that the other lines are on, and is unknown where they differ', () => {
    const old = readPanel({ sodiumMg: '480 mg 20%', potassiumMg: '10%', ironMg: '10%' }, 'us');
    expect(old.lines[1]?.amount).toEqual(wholeRange(315, 437.5));
    const unclear = readPanel({ sodiumMg: '480 mg 20%', fiberG: '7 g 25%', potassiumMg: '10%', ironMg: '10%' }, 'us');
    expect(unclear.base).toBe('unclear');
    expect(unclear.lines[2]?.amount).toEqual({ kind: 'unknown', reason: 'old-daily-value-unclear' });
    // Iron has had 18 mg all along.
    expect(unclear.lines[3]?.amount).toEqual(wholeRange(expect.closeTo(1.62, 9), 2.25));
  });
});

describe('EU and UK', () => {
  // Commission guidance on tolerances, December 2012, rounding table; "0,8" may be coarser than "0,80" (derived).
  test.each([
    ['saltG', '0,80 g', 0.8, 0.795, 0.805],
    ['saltG', '0,8 g', 0.8, 0.75, 0.85],
    ['saltG', 0.8, 0.8, 0.75, 0.85],
    ['saltG', '0', 0, 0, 0.5],
    ['saltG', '0,00 g', 0, 0, 0.0125],
    ['fatG', '0 g', 0, 0, 0.5],
    ['fatG', '12 g', 12, 11.5, 12.5],
    ['saturatedFatG', '0,0 g', 0, 0, 0.1],
    ['energyKj', '1 200 kJ', 1200, 1199.5, 1200.5],
    ['potassiumMg', '1250 mg', 1250, 1245, 1255],
  ] as const)('[LBL-9] %s "%s" is compared as %d, range %d to %d', (key, printed, value, lo, hi) => {
    expect(amount(key, printed, 'eu')).toEqual(known(value, expect.closeTo(lo, 9) as number, expect.closeTo(hi, 9) as number));
  });

  test('[LBL-9] "< 0,01 g" of salt stands for up to 0.0125 g', () => {
    expect(amount('saltG', '< 0,01 g', 'eu')).toEqual(wholeRange(0, 0.0125));
    expect(amount('fatG', '< 0,5 g', 'eu')).toEqual(wholeRange(0, 0.5));
  });
});

describe('Canada', () => {
  // Rounding bands of the Food and Drug Regulations, tables to B.01.401, from memory.
  test.each([
    ['potassiumMg', 0, 0, 5],
    ['potassiumMg', 40, 35, 45],
    ['potassiumMg', 50, 45, 62.5],
    ['potassiumMg', 75, 62.5, 87.5],
    ['potassiumMg', 250, 237.5, 275],
    ['potassiumMg', 300, 275, 325],
    ['potassiumMg', 360, 355, 365],
    ['ironMg', 0.4, 0.35, 0.45],
    ['ironMg', 1.25, 1.125, 1.375],
    ['sodiumMg', 140, 137.5, 145],
    ['fatG', 0.3, 0.25, 0.35],
  ] as const)('[LBL-10] %s %d is %d to %d', (key, printed, lo, hi) => {
    expect(amount(key, printed, 'ca')).toEqual(known(printed, expect.closeTo(lo, 9) as number, expect.closeTo(hi, 9) as number));
  });

  test('[LBL-10] 10 % of potassium alone may be of 3400 or of the older 4700 mg (table of 20 October 2022)', () => {
    expect(amount('potassiumMg', '10%', 'ca')).toEqual(wholeRange(306, 587.5));
  });
});

describe('laws', () => {
  const anyNutrient = fc.constantFrom(...nutrientKeys);
  const anyAmount = fc.oneof(
    fc.double({ min: 0, max: 3, noNaN: true }),
    fc.double({ min: 0, max: 200, noNaN: true }),
    fc.double({ min: 0, max: 5000, noNaN: true }),
    fc.integer({ min: 0, max: 20_000 }).map(n => n / 4),
  );
  // `nearest` takes a figure within a billionth of a tie for the tie.
  const dust = 1e-6;
  const holds = (read: Amount, x: number) => read.kind === 'known' && read.range.lo <= x + dust && x <= read.range.hi + dust;

  test('[LBL-4] what a true amount prints as stands for a range that holds it', () => {
    fc.assert(
      fc.property(anyNutrient, anyAmount, (nutrient, x) => holds(amount(nutrient, usDeclaredFigure(nutrient, x)), x)),
      { numRuns: runs },
    );
  });

  test('[LBL-5] what a true amount prints as %DV stands for a range that holds it, alone and beside the amount', () => {
    fc.assert(
      fc.property(anyNutrient, anyAmount, fc.boolean(), (nutrient, x, ofPrinted) => {
        const figure = usDeclaredFigure(nutrient, x);
        const basis = ofPrinted && typeof figure === 'number' ? figure : x;
        const percent = usDeclaredDailyValuePercent(nutrient, basis);
        fc.pre(percent !== undefined && percent < 100_000);
        // Of minerals, a percent of the printed amount may differ from that of the true one; then it tells of the printed amount.
        const told = isMineral(nutrient) ? basis : x;
        expect(holds(amount(nutrient, `${percent}%`), told)).toBe(true);
        if (nutrient !== 'proteinG')
          expect(
            holds(
              amount(nutrient, typeof figure === 'number' ? `${figure} ${nutrients[nutrient].unit} ${percent}%` : `${figure} ${percent}%`),
              told,
            ),
          ).toBe(true);
      }),
      { numRuns: runs },
    );
  });

  test('[LBL-4] the printed number lies in its range', () => {
    fc.assert(
      fc.property(
        anyNutrient,
        fc.oneof(fc.integer({ min: 0, max: 3000 }), anyAmount),
        fc.constantFrom<Market>('us', 'ca', 'eu', 'uk'),
        fc.option(fc.integer({ min: 0, max: 100 })),
        (nutrient, printed, market, percent) => {
          const read = amount(
            nutrient,
            percent === null ? printed : `${printed.toFixed(2)} ${nutrients[nutrient].unit} ${percent}%`,
            market,
          );
          if (read.kind === 'known' && read.printed !== undefined) {
            expect(read.range.lo).toBeLessThanOrEqual(read.printed);
            expect(read.range.hi).toBeGreaterThanOrEqual(read.printed);
          }
        },
      ),
      { numRuns: runs },
    );
  });

  test('[LBL-6] a %DV beside an amount never widens its range', () => {
    fc.assert(
      fc.property(anyNutrient, fc.integer({ min: 0, max: 3000 }), fc.integer({ min: 0, max: 150 }), (nutrient, printed, percent) => {
        const figure = { kind: 'figure', value: printed, place: 1 } as const;
        const alone = ownAmount(nutrient, figure, 'us', 'current');
        const both = printedRange(nutrient, { ...figure, percent }, 'us');
        if (alone === undefined || both.kind === 'unknown') return;
        expect(both.range.lo).toBeGreaterThanOrEqual(alone.range.lo);
        expect(both.range.hi).toBeLessThanOrEqual(alone.range.hi);
      }),
      { numRuns: runs },
    );
  });

  test('[LBL-4] a coarser print never narrows the range', () => {
    fc.assert(
      fc.property(
        anyNutrient,
        fc.integer({ min: 1, max: 3000 }),
        fc.constantFrom<Market>('us', 'ca', 'eu', 'uk'),
        (nutrient, printed, market) => {
          const fine = ownAmount(nutrient, { kind: 'figure', value: printed, place: 0.1 }, market, 'current');
          const coarse = ownAmount(nutrient, { kind: 'figure', value: printed, place: 1 }, market, 'current');
          expect(coarse!.range.lo).toBeLessThanOrEqual(fine!.range.lo);
          expect(coarse!.range.hi).toBeGreaterThanOrEqual(fine!.range.hi);
        },
      ),
      { numRuns: runs },
    );
  });
});

function isMineral(nutrient: Nutrient): boolean {
  return ['vitaminDMcg', 'calciumMg', 'ironMg', 'potassiumMg', 'phosphorusMg', 'magnesiumMg'].includes(nutrient);
}
