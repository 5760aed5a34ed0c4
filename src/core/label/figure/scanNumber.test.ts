import { expect, test } from 'vitest';
import { decimalsOf, placeOf, scanNumber } from './scanNumber.ts';

const scan = (text: string, commaMarksDecimals: boolean) => {
  const number = scanNumber(text, 0, commaMarksDecimals);
  return number && [number.value, number.place, text.slice(number.end)];
};

// Decimal mark and groups of three as labels write them: "0,8 g", "1 200 kJ" (Regulation (EU) 1169/2011 leaves both to national use).
test.each([
  ['470 mg', 470, 1, ' mg'],
  ['.5 g', 0.5, 0.1, ' g'],
  [',5 g', 0.5, 0.1, ' g'],
  ['5. g', 5, 1, '. g'],
  ['0,8', 0.8, 0.1, ''],
  ['1,23', 1.23, 0.01, ''],
  ['1,2345', 1.2345, 0.0001, ''],
  ['1234,567', 1234.567, 0.001, ''],
  ['1 200', 1200, 1, ''],
  ['1\u00a0200', 1200, 1, ''],
  ['1\u2009200', 1200, 1, ''],
  ['1\u202f200', 1200, 1, ''],
  ["1'200", 1200, 1, ''],
  ['1\u2019200', 1200, 1, ''],
  ['1 200 300', 1_200_300, 1, ''],
  ['1 200,5', 1200.5, 0.1, ''],
  ['1,234,567', 1_234_567, 1, ''],
  // No groups: one mark and then another, four digits before the first, a zero before it, two or four digits behind it.
  ["1 200'300", 1200, 1, "'300"],
  ['1200 300', 1200, 1, ' 300'],
  ['0 200', 0, 1, ' 200'],
  ['12 30', 12, 1, ' 30'],
  ['12 3000', 12, 1, ' 3000'],
  ['5:3', 5, 1, ':3'],
] as const)('[LBL-3] "%s" is %d to %d, and "%s" is left', (text, value, place, left) => {
  for (const commaMarksDecimals of [true, false]) expect(scan(text, commaMarksDecimals)).toEqual([value, place, left]);
});

test.each([
  ['1.234', true, 1234, 1, true],
  ['1,234', true, 1234, 1, true],
  ['1 234', true, 1234, 1, false],
  ['1,234,567', true, 1_234_567, 1, false],
  ['1.234,5', true, 1234.5, 0.1, false],
  ['1.234', false, 1.234, 0.001, false],
  ['1,234', false, 1234, 1, false],
  ['1,234.5', false, 1234.5, 0.1, false],
])('[LBL-3] "%s" where the comma marks decimals (%s) is %d to %d; two readings: %s', (text, comma, value, place, ambiguous) => {
  expect(scanNumber(text, 0, comma)).toMatchObject({ value, place, ambiguous });
});

test('[LBL-3] which mark was the decimal mark is told', () => {
  expect(scanNumber('1,5', 0, false)?.decimalComma).toBe(true);
  expect(scanNumber('1.5', 0, false)?.decimalComma).toBe(false);
  expect(scanNumber('1,200', 0, false)?.decimalComma).toBe(false);
});

test.each(['', 'x', '.', ',', '. 5', ',g'])('[LBL-3] no number begins "%s"', text => {
  expect(scanNumber(text, 0, true)).toBeUndefined();
});

test('[LBL-3] fifteen digits are a number, sixteen are not', () => {
  for (const text of ['123456789012345', '123 456 789 012 345', '12345678.9012345']) {
    expect(scan(text, false)).toEqual([Number(text.replaceAll(' ', '')), text.includes('.') ? 1e-7 : 1, '']);
    expect(scan(`1${text}`.replace('1123 ', '1 123 '), false)).toBeUndefined();
  }
});

test('decimals of a number and the worth of the last', () => {
  expect([140, 0.5, 0.25, 12.125, 1e-7, 1.5e-7].map(decimalsOf)).toEqual([0, 1, 2, 3, 7, 8]);
  expect([0, 1, 2, 3, 4, 5].map(placeOf)).toEqual([1, 0.1, 0.01, 0.001, 0.0001, 0.00001]);
});
