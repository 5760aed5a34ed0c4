import { describe, expect, test } from 'vitest';
import { householdFluid } from './householdFluid.ts';
import { proposalToJson } from './proposalToJson.ts';
import { type Limit, position, proposed, type TargetUnit } from './target.ts';
import { decidedWords, rangeWords } from './targetWords.ts';

const open = Number.POSITIVE_INFINITY;

describe('a range as it is read', () => {
  test.each<[TargetUnit, number, number, Limit | undefined, string]>([
    ['g', 38.5, 42, undefined, '38.5 – 42 g'],
    // The ends of a range go outward, a most down and a least up.
    ['g', 38.58, 41.92, 'within', '38.5 – 42 g'],
    ['kcal', 1227.8, 1877.2, 'within', '1227 – 1878 kcal'],
    ['g', 56, 56, 'within', '56 g'],
    ['g', 55.96, 55.96, 'within', '56 g'],
    ['kcal', 1800.4, 1800.4, 'within', '1800 kcal'],
    ['mg', 0, 2300, 'below', 'under 2300 mg'],
    ['mg', 0, 2299.9, 'below', 'under 2299 mg'],
    ['mg', 0.5, 1, 'within', '0 – 1 mg'],
    ['mL', 0, 1300.9, 'at-most', 'at most 1300 mL'],
    ['mL', 1300, 1300, 'at-most', 'at most 1300 mL'],
    ['mg', 0, 1000, 'within', 'at most 1000 mg'],
    ['g', 77.01, open, 'at-least', 'at least 77.1 g'],
    ['kcal', 1750.1, open, 'within', 'at least 1751 kcal'],
    ['g', 77, 77, 'at-least', 'at least 77 g'],
    ['mg', 0, open, 'within', 'no limit set'],
    ['mL', 1, open, 'at-least', 'at least 1 mL'],
    ['named on the label', 0, 0, 'at-most', 'none named on the label'],
    ['named on the label', 0, 1, 'at-most', 'at most 1 named on the label'],
    ['named on the label', 0, open, 'within', 'no limit set'],
  ])('[CLT-52] %s, %d to %d, %s: %s', (unit, lo, hi, limit, words) => {
    expect(rangeWords(unit, { lo, hi }, limit)).toBe(words);
  });

  test.each([
    [{ item: 'sodium', unit: 'mg', kind: 'no-limit' }, 'no limit set'],
    [{ item: 'sodium', unit: 'mg', kind: 'withheld' }, 'no figure set: to be checked'],
    [{ item: 'sodium', unit: 'mg' }, 'no figure set'],
    [{ item: 'sodium', unit: 'mg', range: { lo: 0, hi: 1000 }, limit: 'at-most' }, 'at most 1000 mg'],
    [{ item: 'fluid', unit: 'mL', range: { lo: 0, hi: 1000 }, limit: 'at-most' }, 'at most 1000 mL (4 cups, 33 fl oz)'],
    [{ item: 'fluid', unit: 'mL', range: { lo: 0, hi: 240 }, limit: 'at-most' }, 'at most 240 mL (1 cup, 8 fl oz)'],
    [{ item: 'fluid', unit: 'mL', range: { lo: 0, hi: 50 }, limit: 'at-most' }, 'at most 50 mL'],
  ] as const)('[CLT-52] signed, %o: %s', (target, words) => {
    expect(decidedWords(target)).toBe(words);
  });
});

// 21 CFR 101.9(b)(5)(viii): a cup is 240 mL, so a quarter 60 mL; a US fluid ounce is 29.57 mL.
describe('fluid by the cup', () => {
  test.each<[number, number, Limit, string | undefined, string?, boolean?]>([
    [0, 59, 'at-most', undefined],
    [0, 60, 'at-most', '¼', '2', true],
    [0, 119, 'at-most', '¼', '4', true],
    [0, 180, 'below', '¾', '6', true],
    [0, 240, 'at-most', '1', '8', true],
    [0, 299, 'at-most', '1', '10', true],
    [0, 300, 'at-most', '1¼', '10', false],
    // 800 / 60 = 13.3, 1300 / 60 = 21.7 quarters; 27.05 and 43.96 fl oz.
    [800, 1300, 'within', '3½ – 5¼', '28 – 43', false],
    [180, 240, 'within', '¾ – 1', '7 – 8', true],
    [180, 300, 'within', '¾ – 1¼', '7 – 10', false],
    // No whole quarters between: the most alone.
    [1000, 1010, 'within', '4', '34', false],
    [960, 1019, 'within', '4', '34', false],
    [0, 1000, 'within', '4', '33', false],
    [800, 1300, 'at-most', '5¼', '43', false],
    [240, 240, 'at-least', '1', '9', true],
    [180, 180, 'at-least', '¾', '7', true],
    [1, open, 'at-least', '¼', '1', true],
    [1000, open, 'within', '4¼', '34', false],
    [0, open, 'at-least', undefined],
  ])('[CLT-53] %d to %d mL, %s: %s', (lo, hi, limit, cups, ounces, isOneCup) => {
    const found = householdFluid({ lo, hi }, limit);
    expect(found).toEqual(cups === undefined ? undefined : { cups, ounces, isOneCup });
  });
});

describe('a proposal', () => {
  test('[CLT-42] as JSON has each range as its two ends, outward to hundredths, an open one as null', () => {
    const target = { kind: 'proposed', perKg: null, range: { lo: 38.509, hi: 41.991 }, others: [{ range: { lo: 77.779, hi: open } }] };
    expect(proposalToJson(target)).toEqual({ kind: 'proposed', perKg: null, range: [38.5, 42], others: [{ range: [77.77, null] }] });
  });

  test('[CLT-42] as JSON keeps what is no range as it stands', () => {
    for (const other of [
      { lo: 1, hi: 2, why: '' },
      { lo: '1', hi: 2 },
      { lo: 1, hi: '2' },
      { lo: 1 },
      { lo: 1, why: 2 },
      { hi: 1, why: 2 },
      'words',
      3,
      true,
      null,
    ])
      expect(proposalToJson(other)).toEqual(other);
  });

  test('[CLT-10] asks for a choice where a guideline beside it has another figure at either end', () => {
    const main = { ...position('main', []), range: { lo: 60, hi: 80 } };
    const beside = (lo: number, hi: number) => proposed('protein', 'in short', main, [], [position('other', [], { range: { lo, hi } })]);
    expect([beside(60, 80), beside(50, 80), beside(60, 90)]).toMatchObject([
      { needsChoice: false },
      { needsChoice: true },
      { needsChoice: true },
    ]);
    expect(proposed('protein', 'in short', main, [], [position('no figure', [])])).toMatchObject({ needsChoice: false });
    expect(Object.keys(beside(60, 80)).filter(key => key === 'perKg' || key === 'weightBasis')).toEqual([]);
  });

  test('[CLT-10] is to be confirmed where one of its sources is', () => {
    const sure = { kind: 'guideline', text: 'KDOQI 2020' } as const;
    expect(position('', [sure, { ...sure, toBeConfirmed: true }]).toBeConfirmed).toBe(true);
    expect(position('', [sure]).toBeConfirmed).toBe(false);
  });
});
