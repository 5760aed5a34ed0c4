import { describe, expect, test } from 'vitest';
import { check } from '../../../test/checkWording.ts';
import { parseStatement } from './parseStatement.ts';

const codes = (text: string): string[] => parseStatement(text).issues.map(issue => issue.code);

describe('signs', () => {
  test('[STM-3] a bullet, a middle dot and a wide comma separate', () => {
    check('SALT\u2022PEPPER\u00b7OIL\uff0cRYE', 'SALT, PEPPER, OIL, RYE');
  });
  test.each(['\u00a0', '\u2009', '\u202f', '\u3000', '\u200b', '\u2028', '\u2029', '\t', '\u007f', '\ufeff'])(
    '[STM-17] %j is a blank',
    blank => {
      check(`OIL${blank}PALM, RYE`, 'OIL PALM, RYE');
      check(`OIL, RYE${blank}`, 'OIL, RYE');
    },
  );
  test('[STM-17] marks, fractions and emoji are no part of a name, and no damage', () => {
    check('OIL#, #5 RYE, @MINT, OATS!RYE, CURD\\MACE', 'OIL, 5 RYE, MINT, OATS RYE, CURD MACE');
    check('1\u00bd OIL, \u00bc RYE, \u00be MACE, OATS\u2122, CURD\u2020, 5\u00b0 KALE', '1 OIL, RYE, MACE, OATS, CURD, 5 KALE');
    check('\ud83d\ude00 OIL (SEA), \ud83d\ude00', 'OIL{SEA}');
    expect(codes('1\u00bd OIL, OATS\u2122, CURD\u2020, 5\u00b0 KALE')).toEqual([]);
  });
  test('[STM-17] damage is told, true letters with an accent are none', () => {
    check('VINEGAR\u00c2\u00ae, RYE', 'VINEGAR, RYE');
    check('P\u00c2T\u00c9, PUR\u00c9E, JALAPE\u00d1O, \u00e2ge', 'P\u00c2T\u00c9, PUR\u00c9E, JALAPE\u00d1O, \u00e2ge');
    expect(codes('VINEGAR\u00c2\u00ae, RYE')).toEqual(['text-damaged']);
    expect(codes('OIL\u00e2\u201e\u00a2, RYE')).toEqual(['text-damaged']);
    expect(codes('OIL\ufffd, RYE')).toEqual(['text-damaged']);
    expect(codes('P\u00c2T\u00c9, PUR\u00c9E, \u00c3')).toEqual([]);
  });
  test('[STM-17] tags and entities', () => {
    check('OIL <SUP>1</SUP>, RYE<br/>MACE', 'OIL 1, RYE MACE');
    check('OIL <superb>, RYE', 'OIL{superb}, RYE');
    check('OIL&nbsp;A &reg; B &#174; C &#xAE; D', 'OIL A B C D');
    check('OIL_x000D_RYE_X000d_MACE_OATS', 'OIL RYE MACE OATS');
    check('OIL, MINT &amp; RYE', 'OIL, MINT, RYE');
  });
  test('[STM-4] "<" before a figure is a comparison, else a bracket', () => {
    check('OIL, <2% RYE', 'OIL, RYE≤2');
    check('OIL, < 2% RYE', 'OIL, RYE≤2');
    check('OIL, <=2% RYE', 'OIL, RYE≤2');
    check('OIL, < = 2% RYE', 'OIL, RYE≤2');
    check('OIL <SEA, KELP>, RYE', 'OIL{SEA, KELP}, RYE');
  });
  test.each(['&/OR', '& / OR', 'AND / OR', 'AND/OR', 'AND OR', 'OR/AND', 'OR / AND'])('[STM-6] "%s" is one word', joint => {
    check(`MINT ${joint} RYE`, '#MINT AND/OR RYE{|MINT, |RYE}');
  });
  test('[STM-6] "and organic" is no "and or"', () => {
    check('OIL, MINT AND ORGANIC RYE', 'OIL, MINT, organic RYE');
  });
});

describe('words and numbers', () => {
  test('[STM-17] apostrophes stay inside a word and fall away around it', () => {
    check("BAKER'S YEAST, BAKER\u2019S RYE, BAKER`S OIL", "BAKER'S YEAST, BAKER\u2019S RYE, BAKER`S OIL");
    check("'OIL', RYE'", 'OIL, RYE');
    check("O'5 OIL", 'O 5 OIL');
  });
  test('[STM-3] a comma or period between digits is part of the number, one behind them separates', () => {
    check('1,234.5 IU OIL, RYE 1.5.2', '1,234.5 IU OIL, RYE 1.5.2');
    check('OIL 1,RYE', 'OIL 1, RYE');
    check('OIL 1 ,2 RYE', 'OIL 1, 2 RYE');
    check('OIL 1.RYE', 'OIL 1, RYE');
  });
  test('a unit, "of" and "or" behind digits is a word of its own, other letters are part of the first', () => {
    const words = (text: string) => parseStatement(text).tokens.map(token => token.text);
    expect(words('30g 5mg 6mcg 7kg 8ml 9oz 2of 3or 4percent')).toEqual('30 g 5 mg 6 mcg 7 kg 8 ml 9 oz 2 of 3 or 4 percent'.split(' '));
    expect(words('500II 2ofX 12B')).toEqual(['500ii', '2ofx', '12b']);
  });
  test('[STM-3] "D,L-" only in front of a name', () => {
    check('OIL, L,D-MALIC ACID', 'OIL, L,D-MALIC ACID');
    check('OIL, D,L MALIC ACID', 'OIL, D, L MALIC ACID');
  });
  test('[STM-17] a letter that grows when it is lowered moves no place', () => {
    const text = '\u0130\u0130 OIL, RYE';
    expect(parseStatement(text).value.ingredients.map(({ name, start, end }) => [name, start, end])).toEqual([
      ['\u0130\u0130 OIL', 0, 6],
      ['RYE', 8, 11],
    ]);
  });
  test('[STM-15] places are code points, also behind half a pair', () => {
    const places = (text: string) => parseStatement(text).value.ingredients.map(({ start, end }) => [start, end]);
    expect(places('\ud83d\ude00 OIL, \ud83d\ude00RYE')).toEqual([
      [2, 5],
      [8, 11],
    ]);
    expect(places('\ud83d OIL, \ude00RYE')).toEqual([
      [2, 5],
      [8, 11],
    ]);
    expect(places('\ud83d\ud83d\ude00 OIL, RYE')).toEqual([
      [3, 6],
      [8, 11],
    ]);
    expect(parseStatement('\ud83d\ude00 OIL (RYE, MINT').issues[0]!.place).toEqual({ start: 6, end: 7 });
  });
});

describe('what was glued together', () => {
  test('[STM-17] a footnote digit stands on two different words of three letters or more', () => {
    check('ABC1, DEF1, 1GHI', 'ABC, DEF, GHI');
    check('ABC1, DEF1, 1GH, 2GHI', 'ABC, DEF, 1GH, 2GHI');
    check('ABC1, ABC1', 'ABC1, ABC1');
    check('ABC1, DEF2', 'ABC1, DEF2');
    check('AB1, CD1', 'AB1, CD1');
    check('ABC10, DEF10', 'ABC10, DEF10');
    expect(parseStatement('CURD1, BEANS1').value.ingredients.map(({ start, end }) => [start, end])).toEqual([
      [0, 4],
      [7, 12],
    ]);
  });
  test('[STM-7] "contains" behind a name only with a colon, "may" behind an allergen only', () => {
    check('RICE, PEPPERCONTAINS MILK', 'RICE, PEPPERCONTAINS MILK');
    check('RICE, XCONTAINS: MILK', 'RICE, X', 'allergens: CONTAINS: MILK');
    check('RICE, WHEATMAY CONTAIN: MILK', 'RICE, WHEAT', 'may-contain-allergens: MAY CONTAIN: MILK');
    check('RICE, XMAY CONTAIN MILK', 'RICE, XMAY', 'allergens: CONTAIN MILK');
  });
});

describe('issues', () => {
  test('[STM-1] what was found is quoted, a long text by its first 60 characters', () => {
    const cut = `${'A'.repeat(58)} B,`;
    const found = (text: string) => parseStatement(text).issues.map(issue => issue.found);
    expect(found(' '.repeat(60))).toEqual([' '.repeat(60)]);
    expect(found(' '.repeat(61))).toEqual([`${' '.repeat(60)}…`]);
    expect(found(cut)).toEqual([',']);
  });
  test('[STM-1] a statement of 50,000 characters is read without a word, one more is told', () => {
    const fits = `${'OIL, '.repeat(9_999)}SALTY`;
    expect([fits.length, codes(fits)]).toEqual([50_000, []]);
    expect(codes(`${fits}X`)).toEqual(['text-too-long']);
  });
  test('[STM-1] a statement that ends with an open bracket or a comma was cut off', () => {
    expect(codes('OIL (')).toEqual(['bracket-not-closed', 'statement-cut-off']);
    expect(codes('OIL,')).toEqual(['statement-cut-off']);
    expect(codes('OIL.')).toEqual([]);
    expect(codes('OIL;')).toEqual([]);
  });
  test('[STM-2] forty brackets inside each other are read, one more is told', () => {
    const nested = (depth: number): string => `${'A ('.repeat(depth)}B${')'.repeat(depth)}`;
    expect(codes(nested(40))).toEqual([]);
    expect(codes(nested(41))).toEqual(['nesting-too-deep', 'bracket-not-opened']);
  });
  test('[STM-2] which bracket is missing is told', () => {
    expect(parseStatement('A [B, C').issues).toMatchObject([
      { code: 'bracket-not-closed', place: { start: 2, end: 3 }, expected: '"]" further on' },
    ]);
    expect(parseStatement('A {B, C)').issues).toMatchObject([
      { code: 'bracket-of-another-kind', place: { start: 7, end: 8 }, expected: '"}"' },
    ]);
  });
});
