import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gtinCheckDigit, readGtin, upcAFromUpcE } from './gtin.ts';

describe('bar code numbers', () => {
  // GS1 General Specifications: the second is GS1's own example; the others worked by its rule.
  test.each([
    ['01234567890', 5],
    ['629104150021', 3],
    ['730001100001', 7],
  ])('[LBL-13] the check digit of %s is %d', (before, digit) => {
    expect(gtinCheckDigit(before)).toBe(digit);
  });

  // UPC-E expansion of the GS1 General Specifications, one row for each ending.
  test.each([
    ['124560', '012000004568'],
    // 0 12 2 0000 345: (0 + 2 + 0 + 0 + 3 + 5) × 3 + 1 + 2 + 0 + 0 + 4 = 37.
    ['123452', '012200003453'],
    ['123643', '012300000642'],
    ['876543', '087600000548'],
    ['753774', '075370000073'],
    ['517019', '051701000097'],
    ['275831', '027100005834'],
  ])('[LBL-13] UPC-E %s is %s', (six, upcA) => {
    expect(upcAFromUpcE(six)).toBe(upcA);
    expect(readGtin(six)).toEqual({ kind: 'gtin', gtin14: upcA.padStart(14, '0'), variableWeight: expect.any(Boolean) });
    expect(readGtin(`0${six}${upcA.at(-1)}`)).toEqual(readGtin(six));
  });

  test('[LBL-13] 8, 12, 13 and 14 digits become 14, blanks and hyphens passed over', () => {
    for (const words of ['012345678905', '0 12345 67890 5', '0-12345-67890-5', '0012345678905', '00012345678905'])
      expect(readGtin(words)).toEqual({ kind: 'gtin', gtin14: '00012345678905', variableWeight: false });
    expect(readGtin('6291041500213')).toMatchObject({ gtin14: '06291041500213' });
    expect(readGtin('96385074')).toMatchObject({ gtin14: '00000096385074' });
  });

  test('[LBL-13] a number for goods weighed in the store is told (prefix 2, from memory)', () => {
    expect(readGtin(`20123400567${gtinCheckDigit('20123400567')}`)).toMatchObject({ variableWeight: true });
    expect(readGtin(`271234005678${gtinCheckDigit('271234005678')}`)).toMatchObject({ variableWeight: true });
  });

  test('[LBL-13] prefix 2 says nothing on 8 digits, nor on a case of 14 that has an indicator before it', () => {
    for (const before of ['2012345', '1201234000567'])
      expect(readGtin(`${before}${gtinCheckDigit(before)}`)).toMatchObject({ kind: 'gtin', variableWeight: false });
  });

  test('[LBL-13] forty characters are read, more are not', () => {
    expect(readGtin('012345678905'.padEnd(40)).kind).toBe('gtin');
    expect(readGtin('012345678905'.padEnd(41))).toEqual({ kind: 'no-gtin', why: 'not-digits' });
  });

  test.each([
    ['012345678906', 'check-digit'],
    // The check digit of the UPC-E is 8.
    ['01245609', 'check-digit'],
    ['12345678905', 'length'],
    ['', 'length'],
    ['9'.repeat(10_000_000), 'not-digits'],
    ['01234567890X', 'not-digits'],
  ])('[LBL-13] a misread number is told apart', (words, why) => {
    expect(readGtin(words)).toEqual({ kind: 'no-gtin', why });
  });

  test('[LBL-13] any single misread digit is caught', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 12, maxLength: 12 }),
        fc.nat({ max: 12 }),
        fc.integer({ min: 1, max: 9 }),
        (before, at, by) => {
          const right = before + gtinCheckDigit(before);
          const wrong = right.slice(0, at) + ((Number(right[at]) + by) % 10) + right.slice(at + 1);
          expect(readGtin(right).kind).toBe('gtin');
          expect(readGtin(wrong)).toEqual({ kind: 'no-gtin', why: 'check-digit' });
        },
      ),
    );
  });
});
