import { describe, expect, test } from 'vitest';
import { check } from '../../../test/checkWording.ts';
import { parseStatement } from './parseStatement.ts';

const codes = (text: string): string[] => parseStatement(text).issues.map(issue => issue.code);

describe('wordings of a bound, section 3 of the measurements', () => {
  test.each([
    'CONTAINS: 2% OR LESS OF',
    'AND ALSO CONTAINS 2% OR LESS OF',
    'AT MOST 2% OF',
    'BELOW 2% OF',
    'UNDER 2%',
    'LESS THEN 2%',
    'LESS THAT 2%',
    'A MAXIMUM OF 2%',
    'A MAX OF 2%',
    'MAXIMUM OF 2%',
    'MAXIMUM: 2%',
    'MAXIMUM 2%',
    'MAX OF 2%',
    'MAX 2%',
    '2% MAX',
    '2% MAXIMUM',
    'NO MORE 2%',
    'NOT OVER 2%',
    'NOT ABOVE 2%',
    'NO GREATER THAN 2%',
    'NOT TO EXCEED 2%',
    'DOES NOT EXCEED 2%',
    'NOT IN EXCESS OF 2%',
    '2 PCT OR LESS OF',
    'CONTAINS 2% OR LESS OF EACH OF THE FOLLOWING INGREDIENTS BY WEIGHT:',
    'CONTAINS 2% OR LESS OF*:',
    'CONTAINS 2% OR LESS OF,',
    'CONTAINS 2% OR LESS OF THE FOLLOWING,',
    'CONTAINS 2% OR LESS:,',
  ])('[STM-4] %s', wording => {
    check(`MILK, ${wording} SALT, GUAR GUM`, 'MILK, SALT≤2, GUAR GUM≤2');
  });
  test.each([
    '2% MILKFAT',
    '2% X SALT',
    'UP WITH SALT',
    'MOST SALT',
    'A MAX SALT',
    'NO MORE THAN SALT',
    'LESS THAN 24 SALT',
    'LESS THAN 1/2 OF SALT',
    'LESS THAN 1/0 OF 1% SALT',
    'LESS THAN 1 OF 2% SALT',
    '24 OR LESS SALT',
  ])('[STM-4] no bound: %s', name => {
    check(`MILK, ${name}, GUAR GUM`, `MILK, ${name}, GUAR GUM`);
    expect(codes(`MILK, ${name}, GUAR GUM`)).toEqual([]);
  });
});

describe('the percentage of a bound', () => {
  // 21 CFR 101.4(a)(2): "2 percent or less … or, if applicable, 1.5 percent, 1.0 percent, or 0.5 percent".
  test.each([
    ['2%', 2],
    ['TWO PERCENT', 2],
    ['1.5%', 1.5],
    ['1,5%', 1.5],
    ['1%', 1],
    ['1.0%', 1],
    ['ONE PERCENT', 1],
    ['0.5%', 0.5],
    ['1/2%', 0.5],
    ['HALF PERCENT', 0.5],
    ['ONE HALF PERCENT', 0.5],
    ['ONE HALF OF ONE PERCENT', 0.5],
  ])('[STM-4] %s is allowed', (printed, percent) => {
    check(`MILK, LESS THAN ${printed} SALT`, `MILK, SALT≤${percent}`);
    expect(codes(`MILK, LESS THAN ${printed} SALT`)).toEqual([]);
  });
  test.each([
    ['THREE PERCENT', 3],
    ['FIVE PERCENT', 5],
    ['ONE QUARTER OF ONE PERCENT', 0.25],
    ['ONE FOURTH OF 1%', 0.25],
    ['ONE TENTH OF 1%', 0.1],
    ['1/10TH OF 1%', 0.1],
    ['ONE TWENTIETH OF 1%', 0.05],
    ['ONE HUNDREDTH OF 1%', 0.01],
    // A third of a percent is 0.3333…: a bound is rounded up, so that it stays true.
    ['1/3 OF 1%', 0.3334],
  ])('[STM-4] %s bounds and is reported', (printed, percent) => {
    check(`MILK, LESS THAN ${printed} SALT`, `MILK, SALT≤${percent}`);
    expect(codes(`MILK, LESS THAN ${printed} SALT`)).toEqual(['threshold-not-allowed']);
  });
  test('[STM-4] a percent sign typed as a 4: only where a second digit stands before it', () => {
    const text = 'MILK, 14 OR LESS OF SALT';
    check(text, 'MILK, SALT≤1');
    expect(parseStatement(text).issues).toMatchObject([
      { code: 'threshold-damaged', place: { start: 6, end: 19 }, found: '14 OR LESS OF' },
    ]);
    check('MILK, 4 OR LESS OF SALT', 'MILK, SALT≤4');
    check('MILK, 10 OR LESS OF SALT', 'MILK, SALT≤10');
    expect(codes('MILK, 4 OR LESS OF SALT')).toEqual(['threshold-damaged', 'threshold-not-allowed']);
  });
});

describe('what a bound holds for', () => {
  test('[STM-4] what stands before it, where a comma or the end of a sentence follows', () => {
    check('MILK, SALT, LESS THAN 2%, GUAR GUM', 'MILK, SALT≤2, GUAR GUM');
    check('MILK, SALT LESS THAN 2%. GUAR GUM', 'MILK, SALT≤2, GUAR GUM');
    check('MILK, SALT LESS THAN 2%', 'MILK, SALT≤2');
  });
  test('[STM-4] its level, not the group before it', () => {
    check('MILK, VITAMINS: NIACIN, IRON, LESS THAN 2% OF SALT', 'MILK, #VITAMINS{NIACIN, IRON}, SALT≤2');
  });
  test('[STM-4] [STM-6] alternatives behind it', () => {
    check('MILK, LESS THAN 2% OF ONE OR MORE OF: CORN OIL, PALM OIL', 'MILK, |CORN OIL≤2, |PALM OIL≤2');
  });
  test('[STM-4] a heading behind it, and what an earlier bound said of the same ingredient', () => {
    check('MILK, LESS THAN 2% OF VITAMINS: NIACIN, IRON', 'MILK, #VITAMINS≤2{NIACIN≤2, IRON≤2}');
    check('MILK, CONTAINS 2% OR LESS OF SALT (LESS THAN 1%), MACE', 'MILK, SALT≤1, MACE≤2');
  });
});
