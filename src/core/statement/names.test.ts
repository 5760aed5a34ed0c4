import { describe, expect, test } from 'vitest';
import { check } from '../../../test/checkWording.ts';
import { parseStatement } from './parseStatement.ts';

describe('alternatives, section 4 of the measurements', () => {
  test('[STM-6] what "or" joins inside an item', () => {
    check('OIL, MINT OR LEEK', 'OIL, #MINT OR LEEK{|MINT, |LEEK}');
    check('OIL, Canola or Palm oil', 'OIL, #Canola or Palm oil{|Canola, |Palm oil}');
    check('OIL (SEA) OR SALT (ROCK), RYE', '#OIL OR SALT{|OIL{SEA}, |SALT{ROCK}}, RYE');
    check('OIL OR SALT (ROCK, IRON) OR FAT (PIG), RYE', '#OIL OR SALT OR FAT{|OIL, |SALT{ROCK, IRON}, |FAT{PIG}}, RYE');
    expect(parseStatement('OIL, MINT OR LEEK (RAW, RED), RYE').value.ingredients[1]).toMatchObject({ start: 5, end: 28 });
  });
  test('[STM-6] behind a comma: the two that it joins; in a bracket all', () => {
    check('OIL, SALT, PEPPER, OR MACE, RYE', 'OIL, SALT, |PEPPER, |MACE, RYE');
    check('OIL, OR MACE', '|OIL, |MACE');
    check('BLEND (OIL, MINT, OR PEPPER), RYE', 'BLEND{|OIL, |MINT, |PEPPER}, RYE');
    check('BLEND (OIL, MINT, AND PEPPER), RYE', 'BLEND{OIL, MINT, PEPPER}, RYE');
  });
  test('[STM-6] the last "or" of a blend of fats or a function speaks of all, of other lists and treatments not', () => {
    const last = 'PALM OR CANOLA{|PALM, |CANOLA}';
    check('OIL (SOY, PALM OR CANOLA), SALT', `OIL{|SOY, #|${last}}, SALT`);
    check('EMULSIFIERS (SOY, PALM OR CANOLA), SALT', `#EMULSIFIERS{|SOY, #|${last}}, SALT`);
    check('SPICES (SOY, PALM OR CANOLA), SALT', `SPICES{SOY, #${last}}, SALT`);
    check('FRIED IN (SOY, PALM OR CANOLA), SALT', `#FRIED IN{SOY, #${last}}, SALT`);
  });
  test.each(['ONE AND/OR MORE OF:', 'ONE OR BOTH OF', 'AT LEAST ONE OF THE FOLLOWING:', 'WITH ANY ONE OF THE FOLLOWING:'])(
    '[STM-6] %s',
    words => {
      check(`RICE, OIL (${words} CORN, OLIVE), SALT`, 'RICE, OIL{|CORN, |OLIVE}, SALT');
    },
  );
  test('[STM-6] [STM-18] "or" and "and" of a note choose and part nothing', () => {
    check('OIL, RYE TO PRESERVE COLOR OR FLAVOR', 'OIL, RYE~TO PRESERVE COLOR OR FLAVOR');
    check('OIL, RYE TO PRESERVE COLOR AND FLAVOR', 'OIL, RYE~TO PRESERVE COLOR AND FLAVOR');
  });
  test('[STM-6] the heading right behind "one or more of" names the whole, a later one does not', () => {
    check('RICE, LESS THAN 2% OF ONE OR MORE OF THE FOLLOWING OILS: CORN, OLIVE', 'RICE, OILS≤2{|CORN≤2, |OLIVE≤2}');
    check('RICE, MAY CONTAIN ONE OR MORE OF: OILS: CORN, OLIVE', 'RICE, ?OILS{?CORN, ?OLIVE}');
    check('RICE, ONE OR MORE OF. OILS: CORN, KALE', 'RICE, @OILS{CORN, KALE}');
    check('RICE, ONE OR MORE OF: CORN, OLIVE, TOP: KALE', 'RICE, |CORN, |OLIVE, @TOP{KALE}');
  });
  test.each(['ONE OF CORN', 'MINT OR LESS', 'MINT OR MORE RYE'])('[STM-6] no alternatives: %s', name => {
    check(`RICE, OIL (${name}, OLIVE), SALT`, `RICE, OIL{${name}, OLIVE}, SALT`);
  });
  test.each(['CAN CONTAIN', 'MAY ALSO INCLUDE', 'MAY* CONTAIN', 'MAY INCLUDES', 'MAY CONTAINS', 'MAY CONTAIN ONE OR MORE OF:'])(
    '[STM-6] %s',
    words => {
      check(`RICE, ${words} SALT, MACE. SUGAR`, 'RICE, ?SALT, ?MACE, SUGAR');
    },
  );
  test('[STM-6] "may" and "can" alone are words of a name; a group ends before "may contain"', () => {
    check('RICE, MAY APPLE, CAN SUGAR', 'RICE, MAY APPLE, CAN SUGAR');
    check('RICE, VITAMINS: NIACIN, IRON, MAY CONTAIN SALT, MACE', 'RICE, #VITAMINS{NIACIN, IRON}, ?SALT, ?MACE');
  });
});

describe('"and" between ingredients', () => {
  test.each([
    ['OIL, RYE AND WATER', 'OIL, RYE, WATER'],
    ['OIL, MINT & RYE', 'OIL, MINT, RYE'],
    ['OIL, BHA AND BHT, MACE', 'OIL, BHA, BHT, MACE'],
    ['OIL, CITRIC ACID AND WATER, MACE', 'OIL, CITRIC ACID, WATER, MACE'],
    ['OIL, SODIUM BENZOATE AND WATER, MACE', 'OIL, SODIUM BENZOATE, WATER, MACE'],
    ['OIL, PRESERVED BY BHA AND BHT', 'OIL, BHA, BHT~PRESERVED BY'],
    ['OIL, BHA AND PRESERVED BY BHT', 'OIL, BHA, BHT~PRESERVED BY'],
  ])('[STM-18] two of %s', (text, tree) => {
    check(text, tree);
  });
  test.each([
    'RYE AND WATER, MACE',
    'CALCIUM AND SODIUM CASEINATES',
    'TRI- AND DICALCIUM PHOSPHATE',
    'NATURAL AND RED FLAVOR',
    'LEAVES OF MINT AND RYE',
    'MINT IN OIL AND RYE',
    'MINT WITH OIL AND RYE',
    'MINT FROM SPAIN AND RYE',
    'MINT AND RYE AND WATER',
    '5 AND RYE',
    'RYE AND 5',
    'SALT AND PEPPER',
  ])('[STM-18] one name in %s', name => {
    check(`OIL, ${name}`, `OIL, ${name}`);
  });
});

describe('notes, section 5 of the measurements', () => {
  test.each(['TO PRESERVE', 'FOR COLOR', 'AS A PRESERVATIVE', 'USED AS A PRESERVATIVE', 'USED TO KEEP COLOR', 'ADDED FOR COLOR'])(
    '[STM-8] %s, behind a name, a comma and in a bracket',
    note => {
      check(`OIL, LECITHIN ${note}, RYE`, `OIL, LECITHIN~${note}, RYE`);
      check(`OIL, LECITHIN, ${note}, RYE`, `OIL, LECITHIN~${note}, RYE`);
      check(`OIL, LECITHIN (${note}), RYE`, `OIL, LECITHIN~${note}, RYE`);
      check(`OIL, LECITHIN, (${note}), RYE`, `OIL, LECITHIN~${note}, RYE`);
    },
  );
  test.each([
    'SALT TO TASTE',
    'SALT FOR DOGS',
    'SALT AS ROCKS',
    'SALT ADDED MINT',
    'GRADE A EMULSIFIER',
    'HAM - NO NITRITES',
    'MINT PROTECTED BY BHT',
    'FRESHNESS OF THE PRESERVED BY BHT',
    'PRESERVED BHT',
    'OIL - RYE',
  ])('[STM-8] all of it is a name: %s', name => {
    check(`OIL, ${name}, RYE`, `OIL, ${name}, RYE`);
  });
  test('[STM-8] the bound on the length of "no … added"', () => {
    const ten = 'ONE TWO THREE FOUR FIVE SIX SEVEN EIGHT NINE TEN';
    check(`OIL, HAM - NO ${ten} ADDED, RYE`, `OIL, HAM~NO ${ten} ADDED, RYE`);
    check(`OIL, HAM - NO ${ten} ELEVEN ADDED, RYE`, `OIL, HAM - NO ${ten} ELEVEN ADDED, RYE`);
  });
  test('[STM-6] "if used" says that it may be absent; before a list it heads a group', () => {
    check('OIL, SALT IF USED, RYE', 'OIL, ?SALT~IF USED, RYE');
    check('OIL, SALT, IF USED, RYE', 'OIL, ?SALT~IF USED, RYE');
    check('OIL, SALT, IF USED (MINT), RYE', 'OIL, SALT, #?IF USED{MINT}, RYE');
  });
  test('[STM-8] a lead-in', () => {
    check('OIL, COLORED WITH ANNATTO', 'OIL, ANNATTO~COLORED WITH');
    check('OIL, FRESHNESS PROTECTED BY BHT', 'OIL, BHT~FRESHNESS PROTECTED BY');
    check('OIL, COLOR RETAINED BY BHT', 'OIL, BHT~COLOR RETAINED BY');
    check('OIL (PRESERVED WITH BHT, BHA), RYE', 'OIL{BHT~PRESERVED WITH, BHA}, RYE');
  });
  test.each(['TO BE NICE', 'PRESERVES COLOR', 'A FINE RYE', 'A', 'FROM RYE', 'NUT FREE', 'B12', 'COLOR & FLAVOR', '5', 'ORGANIC'])(
    '[STM-8] a note in a bracket: %s',
    note => {
      check(`OIL (${note}), RYE`, `OIL~${note}, RYE`);
    },
  );
  test.each(['PRESERVE', 'MADE OF RYE', 'SEA', 'FROM RYE, MINT', 'TO BE NICE, RED', 'COLOR, MINT'])(
    '[STM-8] parts in a bracket: %s',
    parts => {
      check(`OIL (${parts}), RYE`, `OIL{${parts}}, RYE`);
    },
  );
  test('[STM-8] a note with commas, and one with a bracket of its own', () => {
    check('OIL (TO PROTECT FLAVOR, COLOR), RYE', 'OIL~TO PROTECT FLAVOR COLOR, RYE');
    check('OIL (COLOR (RED)), RYE', 'OIL~COLOR RED, RYE');
    check('OIL (MAY CONTAIN COLOR), RYE', '?OIL~COLOR, RYE');
    check('OIL (), RYE', 'OIL, RYE');
  });
});

describe('printed percentages', () => {
  test('[STM-12] behind a name of two words at least, or in a bracket; before a name it is part of it', () => {
    check('RYE OIL 60%, SALT', 'RYE OIL=60, SALT');
    check('OIL (60%), SALT', 'OIL=60, SALT');
    check('5% OIL, RYE', '5% OIL, RYE');
    check('OIL (100%), RYE', 'OIL=100, RYE');
    check('OIL (100.5%), RYE', 'OIL, RYE');
    check('OIL (1,234%), RYE', 'OIL, RYE');
  });
  test.each([
    // The first of two is at least half; the percentage is told with its last decimal.
    ['OIL (60%), RYE', 59.5, 60.5],
    ['OIL (60.0%), RYE', 59.95, 60.05],
    ['OIL (60,25%), RYE', 60.245, 60.255],
    ['OIL (100%), RYE', 99.5, 100],
    ['OIL (50%), RYE', 50, 50.5],
    // Less than half cannot be the first of two: the percentage is kept.
    ['OIL (49.5%), RYE', 49.45, 49.55],
  ])('[STM-12] %s', (text, lo, hi) => {
    const { lo: low, hi: high } = parseStatement(text).value.ingredients[0]!.sharePercent;
    expect(low).toBeCloseTo(lo, 9);
    expect(high).toBeCloseTo(hi, 9);
  });
  test.each([
    ['OIL, RYE (50%)', []],
    ['OIL, RYE (51%)', ['percent-out-of-order']],
    ['OIL (49.5%), RYE', ['percent-out-of-order']],
    ['OIL (49.95%), RYE (40%)', ['percent-out-of-order']],
    ['OIL (50%), RYE', []],
    // 2 % printed may be 1.5 %.
    ['OIL, CONTAINS 1.5% OR LESS OF RYE (2%)', []],
    ['OIL, CONTAINS 1% OR LESS OF RYE (2%)', ['percent-out-of-order']],
    ['OIL (49%), RYE', ['percent-out-of-order']],
  ])('[STM-12] whether %s contradicts the order', (text, issues) => {
    expect(parseStatement(text).issues.map(({ code }) => code)).toEqual(issues);
  });
});

describe('brackets and joints', () => {
  test('[STM-15] an ingredient reaches over its brackets and notes, also in front', () => {
    const places = (text: string) => parseStatement(text).value.ingredients.map(({ start, end }) => [start, end]);
    expect(places('(FRESH) OIL, RYE')).toEqual([
      [0, 11],
      [13, 16],
    ]);
    expect(places('OIL (FRESH), BHT, TO PRESERVE COLOR (RED), RYE')).toEqual([
      [0, 11],
      [13, 41],
      [43, 46],
    ]);
    expect(places('BHT, (FRESH), RYE')).toEqual([
      [0, 12],
      [14, 17],
    ]);
  });
  test('[STM-6] [STM-12] what may be absent is nothing at least, whatever its percentage', () => {
    const { sharePercent } = parseStatement('RICE, MAY CONTAIN OIL (20%)').value.ingredients[1]!;
    expect(sharePercent).toEqual({ lo: 0, hi: 20.5 });
  });
  test('[STM-2] a bracket without a name of its own', () => {
    check('SALT, (SEA, IODINE), OIL', 'SALT, SEA, IODINE, OIL');
    check('(SEA, IODINE), OIL', 'SEA, IODINE, OIL');
    check('SALT (SEA) (ROCK), OIL', 'SALT{SEA, ROCK}, OIL');
  });
  test('[STM-3] what goes on behind a bracket', () => {
    check('CHEESE (MILK, SALT) POWDER, OIL', 'CHEESE POWDER{MILK, SALT}, OIL');
    check('CHEESE (MILK, SALT) 5, OIL', 'CHEESE 5{MILK, SALT}, OIL');
    check('CHEESE (RYE) WATER, OIL', 'CHEESE WATER{RYE}, OIL');
    const text = 'CHEESE (MILK, SALT) WATER (TAP, SEA) MINT, OIL';
    check(text, 'CHEESE{MILK, SALT}, WATER{TAP, SEA}, MINT, OIL');
    expect(parseStatement(text).issues).toMatchObject([
      { code: 'separator-missing', place: { start: 20, end: 25 } },
      { code: 'separator-missing', place: { start: 37, end: 41 } },
    ]);
  });
  test('[STM-3] joints at the ends of an item are no part of its name', () => {
    check('AND OIL, RYE AND, PLUS MINT', 'OIL, RYE, MINT');
    check('- OIL -, RYE /', 'OIL, RYE');
    check('AND, RYE', 'RYE');
  });
  test('"organic" is told beside the name', () => {
    check('ORGANIC OIL, RYE', 'organic OIL, RYE');
    check('ORGANIC, RYE', 'ORGANIC, RYE');
  });
});
