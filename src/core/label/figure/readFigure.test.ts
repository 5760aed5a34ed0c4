import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computed } from '../../../../test/processorTime.ts';
import type { Market, PrintedFigure } from '../label.ts';
import type { PanelKey } from '../panelKeys.ts';
import type { Figure } from './figure.ts';
import { readFigure } from './readFigure.ts';

const runs = process.env.PLATEWRIGHT_LONG ? 100_000 : 300;

function read(key: PanelKey, printed: PrintedFigure, market: Market = 'us') {
  const { value, issues } = readFigure(key, printed, market, `panel.${key}`);
  return { value, codes: issues.map(({ code }) => code) };
}

describe('words as printed', () => {
  // The forms named in docs/formats.md and 21 CFR 101.9(d)(7)(i), which lets "<" stand for "less than".
  const rows: readonly (readonly [PanelKey, PrintedFigure, Market, Omit<Figure, 'kind'>])[] = [
    ['sodiumMg', 230, 'us', { value: 230, place: 1 }],
    ['fatG', 2.5, 'us', { value: 2.5, place: 0.1 }],
    ['fiberG', '<1 g', 'us', { value: 1, place: 1, lessThan: true }],
    ['fiberG', 'Less than 1g', 'us', { value: 1, place: 1, lessThan: true }],
    ['cholesterolMg', 'less than 5 mg', 'us', { value: 5, place: 1, lessThan: true }],
    ['potassiumMg', '470 mg 10%', 'us', { value: 470, place: 1, percent: 10 }],
    ['potassiumMg', '470mg (10% DV)', 'us', { value: 470, place: 1, percent: 10 }],
    ['potassiumMg', '10%', 'us', { percent: 10 }],
    ['calciumMg', '<2%', 'us', { percent: 2, percentLessThan: true }],
    ['calciumMg', '*', 'us', { percent: 2, percentLessThan: true }],
    ['calciumMg', '1,200 mg', 'us', { value: 1200, place: 1 }],
    ['calciumMg', '1,234.5 mg', 'us', { value: 1234.5, place: 0.1 }],
    ['saltG', '0,8 g', 'eu', { value: 0.8, place: 0.1 }],
    ['saltG', '0,80 g', 'eu', { value: 0.8, place: 0.01 }],
    ['saltG', '0,125 g', 'eu', { value: 0.125, place: 0.001 }],
    ['saltG', '< 0,01 g', 'eu', { value: 0.01, place: 0.01, lessThan: true }],
    ['energyKj', '1 200 kJ', 'eu', { value: 1200, place: 1 }],
    ['energyKj', '1\u202f200 kJ', 'eu', { value: 1200, place: 1 }],
    ['energyKj', '1.234,5 kJ', 'eu', { value: 1234.5, place: 0.1 }],
    ['energyKcal', '1200 kJ / 287 kcal', 'eu', { value: 287, place: 1 }],
    ['energyKj', '1200 kJ / 287 kcal', 'eu', { value: 1200, place: 1 }],
    ['vitaminDMcg', '2 µg', 'us', { value: 2, place: 1 }],
    ['vitaminDMcg', '2 \u03bcg', 'us', { value: 2, place: 1 }],
    ['fatG', '.5 g', 'us', { value: 0.5, place: 0.1 }],
    ['saltG', ',5 g', 'eu', { value: 0.5, place: 0.1 }],
    ['saltG', '1,234', 'eu', { value: 1.234, place: 0.001 }],
    ['fiberG', 'less than1 g', 'us', { value: 1, place: 1, lessThan: true }],
    ['potassiumMg', '470 10%', 'us', { value: 470, place: 1, percent: 10 }],
    ['potassiumMg', '10% 470 mg', 'us', { value: 470, place: 1, percent: 10 }],
    ['potassiumMg', '100000%', 'us', { percent: 100_000 }],
    ['potassiumMg', 10_000_000, 'us', { value: 10_000_000, place: 1 }],
    ['potassiumMg', '5'.padEnd(200), 'us', { value: 5, place: 1 }],
    // What stands between the parts of a figure, and every blank.
    ...['(', ')', '/', '*', '†', ';', ', ', '\t', '\u00a0', '\u2009', '\u202f'].map(
      mark => ['potassiumMg', `470${mark.trim() === '' ? mark : ' '}mg${mark}10%`, 'us', { value: 470, place: 1, percent: 10 }] as const,
    ),
    ['potassiumMg', 'Not a significant source of potassium', 'us', { notSignificant: true }],
  ];
  test.each(rows)('[LBL-3] %s "%s" on a %s panel', (key, printed, market, figure) => {
    expect(read(key, printed, market)).toEqual({ value: { kind: 'figure', ...figure }, codes: [] });
  });

  test.each([
    ['sodiumMg', '0.47 g', { value: 470, place: 10 }],
    ['saltG', '800 mg', { value: 0.8, place: 0.001 }],
    // 1 IU of vitamin D is 0.025 mcg: 21 CFR 101.9(c)(8)(iv), note on units.
    ['vitaminDMcg', '400 IU', { value: 10, place: 0.025 }],
    ['energyKj', '100 kcal', { value: 418.4, place: 4.184 }],
    ['waterMl', '100 g', { value: 100, place: 1 }],
    ['vitaminDMcg', '1 mg', { value: 1000, place: 1000 }],
    ['potassiumMg', '10000 g', { value: 10_000_000, place: 1000 }],
    // 1 kcal is 4.184 kJ exactly.
    ['energyKcal', '418.4 kJ', { value: 100, place: 0.0239005736138 }],
  ] as const)('[LBL-3] %s "%s" is converted and said so', (key, printed, figure) => {
    expect(read(key, printed)).toEqual({ value: { kind: 'figure', ...figure, converted: true }, codes: ['unit-converted'] });
  });

  test('[LBL-3] a comma before one or two digits is the decimal mark, on a US panel too, with an issue', () => {
    expect(read('fatG', '1,5 g')).toEqual({ value: { kind: 'figure', value: 1.5, place: 0.1 }, codes: ['decimal-comma'] });
    expect(read('fatG', '1,25')).toEqual({ value: { kind: 'figure', value: 1.25, place: 0.01 }, codes: ['decimal-comma'] });
  });

  test('[LBL-3] one mark before three digits is ambiguous where the comma marks decimals, but a gram figure has no thousands', () => {
    expect(read('potassiumMg', '1,200 mg', 'eu')).toEqual({
      value: { kind: 'no-figure', reason: 'not-legible' },
      codes: ['figure-ambiguous'],
    });
    expect(read('energyKj', '1.200 kJ', 'eu').codes).toEqual(['figure-ambiguous']);
    expect(read('saltG', '1,234 g', 'eu').value).toEqual({ kind: 'figure', value: 1.234, place: 0.001 });
  });
});

describe('what cannot be read', () => {
  const rows: readonly (readonly [PrintedFigure, string, string])[] = [
    [Number.NaN, 'not-a-number', 'figure-out-of-bounds'],
    [Number.POSITIVE_INFINITY, 'not-a-number', 'figure-out-of-bounds'],
    [1e308, 'not-a-number', 'figure-out-of-bounds'],
    [-5, 'not-a-number', 'figure-negative'],
    ['-5 mg', 'not-a-number', 'figure-negative'],
    ['5-10 mg', 'not-legible', 'figure-ambiguous'],
    ['5 10 mg', 'not-legible', 'figure-ambiguous'],
    ['10% 20%', 'not-legible', 'figure-ambiguous'],
    ['O mg', 'not-legible', 'figure-letter-for-digit'],
    ['5O mg', 'not-legible', 'figure-letter-for-digit'],
    ['l5 mg', 'not-legible', 'figure-letter-for-digit'],
    ['1e308', 'not-a-number', 'figure-not-readable'],
    ['9'.repeat(190), 'not-a-number', 'figure-out-of-bounds'],
    ['=SUM(A1)', 'not-a-number', 'figure-not-readable'],
    ['\0', 'not-a-number', 'figure-not-readable'],
    ['12\0 mg', 'not-a-number', 'figure-not-readable'],
    ['trace', 'not-a-number', 'figure-not-readable'],
    ['less than', 'not-a-number', 'figure-not-readable'],
    ['5 mg <', 'not-a-number', 'figure-not-readable'],
    ['٣ mg', 'not-a-number', 'figure-not-readable'],
    ['470 mL', 'not-a-number', 'unit-not-fitting'],
    ['470 kcal', 'not-a-number', 'unit-not-fitting'],
    ['', 'not-printed', 'figure-empty'],
    ['  ', 'not-printed', 'figure-empty'],
    ['—', 'not-printed', 'figure-empty'],
    ['–', 'not-printed', 'figure-empty'],
    ['-', 'not-printed', 'figure-empty'],
    ['5'.padEnd(201), 'not-a-number', 'figure-not-readable'],
    ['\u22125 mg', 'not-a-number', 'figure-negative'],
    ['5\u221210 mg', 'not-legible', 'figure-ambiguous'],
    ['less 5 mg', 'not-a-number', 'figure-not-readable'],
    ['()', 'not-a-number', 'figure-not-readable'],
    ['% DV', 'not-a-number', 'figure-not-readable'],
    ['100001%', 'not-a-number', 'figure-out-of-bounds'],
    ['10001 g', 'not-a-number', 'figure-out-of-bounds'],
    [10_000_001, 'not-a-number', 'figure-out-of-bounds'],
    ['5z mg', 'not-legible', 'figure-letter-for-digit'],
    ['5| mg', 'not-legible', 'figure-letter-for-digit'],
    ['oil', 'not-legible', 'figure-letter-for-digit'],
    ['boil', 'not-a-number', 'figure-not-readable'],
  ];
  test.each(rows)('[LBL-3] %j is unknown, with an issue', (printed, reason, code) => {
    expect(read('sodiumMg', printed)).toEqual({ value: { kind: 'no-figure', reason }, codes: [code] });
  });

  test('[LBL-3] ten megabytes of text are refused at once, and the issue quotes only their beginning', () => {
    for (const unit of ['9', '1,', '<', ' ', '((', '1 ', 'less than ']) {
      const text = unit.repeat(10_000_000 / unit.length);
      const { result, milliseconds } = computed(() => readFigure('sodiumMg', text, 'us', 'panel.sodiumMg'));
      expect(milliseconds).toBeLessThan(1000);
      const { value, issues } = result;
      expect(value).toEqual({ kind: 'no-figure', reason: 'not-a-number' });
      expect(issues[0]?.found.length).toBeLessThan(100);
    }
  });

  test('[LBL-3] whatever the text, reading ends with a figure that is a number from 0 upward, or with an issue', () => {
    const alphabet = fc.string({ unit: fc.constantFrom(...'0123456789.,<>%()/*-= \u00a0oOlgmcukjDV½\0'), maxLength: 24 });
    fc.assert(
      fc.property(fc.oneof(alphabet, fc.string(), fc.double()), fc.constantFrom<Market>('us', 'ca', 'eu', 'uk'), (printed, market) => {
        const { value, issues } = readFigure('sodiumMg', printed, market, 'panel.sodiumMg');
        if (value.kind === 'no-figure') expect(issues.length).toBeGreaterThan(0);
        else {
          for (const number of [value.value ?? 0, value.percent ?? 0, value.place ?? 1]) {
            expect(number).toBeGreaterThanOrEqual(0);
            expect(number).toBeLessThanOrEqual(10_000_000);
          }
        }
      }),
      { numRuns: runs },
    );
  });
});
