import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outline } from '../../../test/outline.ts';
import { computed } from '../../../test/processorTime.ts';
import { parseStatement } from './parseStatement.ts';
import { printStatement } from './printStatement.fixture.ts';

const long = process.env.PLATEWRIGHT_LONG !== undefined;
const read = (text: string): string => outline(parseStatement(text).value);
const codes = (text: string): string[] => parseStatement(text).issues.map(issue => issue.code);
const shares = (text: string): string[] =>
  parseStatement(text).value.ingredients.map(({ name, sharePercent }) => `${name} ${sharePercent.lo}-${sharePercent.hi}`);

describe('brackets', () => {
  test('[STM-2] kinds of brackets mix freely', () => {
    expect(read('SAUCE (CHEESE [MILK, SALT {SEA SALT, IODIDE}], WATER)')).toBe('SAUCE{CHEESE{MILK, SALT{SEA SALT, IODIDE}}, WATER}');
  });
  test('[STM-2] a bracket closed by another kind, one never opened and one never closed are reported and nothing is lost', () => {
    expect(read('FLOUR (WHEAT, NIACIN], SALT')).toBe('FLOUR{WHEAT, NIACIN}, SALT');
    expect(codes('FLOUR (WHEAT, NIACIN], SALT')).toEqual(['bracket-of-another-kind']);
    expect(read('GUMS), SODIUM PHOSPHATE')).toBe('GUMS, SODIUM PHOSPHATE');
    expect(codes('GUMS), SODIUM PHOSPHATE')).toEqual(['bracket-not-opened']);
    expect(read('CHEESE (MILK, SODIUM PHOSPHATE')).toBe('CHEESE{MILK, SODIUM PHOSPHATE}');
    expect(codes('CHEESE (MILK, SODIUM PHOSPHATE')).toEqual(['bracket-not-closed']);
  });
  test('[STM-2] a bracket beside a joint, and one of any length, is kept', () => {
    expect(read('SALT OR (SEA) PEPPER, OIL')).toBe('#SALT OR PEPPER{|SALT, |PEPPER{SEA}}, OIL');
    expect(parseStatement(`FLOUR (${'WHEAT, '.repeat(200_000)}SALT)`).value.ingredients[0]!.parts.length).toBe(200_001);
  });
  test('[STM-2] hopeless nesting is read flat and told', () => {
    const deep = `${'('.repeat(500)}SALT${')'.repeat(500)}`;
    expect(read(deep)).toContain('SALT');
    expect(codes(deep)).toContain('nesting-too-deep');
  });
});

describe('separators', () => {
  test('[STM-3] periods and semicolons separate, abbreviations and decimals do not', () => {
    expect(read('SALT. PEPPER; L. ACIDOPHILUS, YELLOW NO. 5, TRUFFLE 0,5%, 2,000 I.U. VITAMIN A')).toBe(
      'SALT, PEPPER, L ACIDOPHILUS, YELLOW NO 5, TRUFFLE=0.5, 2,000 I U VITAMIN A',
    );
  });
  test('[STM-3] a missing comma behind a bracket begins another ingredient and is reported', () => {
    expect(read('CHEESE (MILK, SALT) WATER')).toBe('CHEESE{MILK, SALT}, WATER');
    expect(codes('CHEESE (MILK, SALT) WATER')).toEqual(['separator-missing']);
  });
});

describe('thresholds, 21 CFR 101.4(a)(2)', () => {
  // The wordings are those measured most often in real statements.
  test.each([
    'WATER, CONTAINS 2% OR LESS OF: SALT, SPICE',
    'WATER, CONTAINS LESS THAN 2% OF EACH OF THE FOLLOWING: SALT, SPICE',
    'WATER. LESS THAN 2% OF SALT, SPICE',
    'WATER AND 2% OR LESS OF EACH OF THE FOLLOWING: SALT, SPICE',
    'WATER, CONTAINS <2% OF SALT, SPICE',
    'WATER, CONTAINS TWO PERCENT OR LESS OF: SALT, SPICE',
    'WATER, CONTAINS 2% OR LESS: SALT, SPICE',
    'WATER, LESS 2% SALT, SPICE',
    'WATER, CONTAINS 2 % OR LESS; OF: SALT, SPICE',
  ])('[STM-4] %s', text => {
    expect(read(text)).toBe('WATER, SALT≤2, SPICE≤2');
  });
  test('[STM-4] check value 52: "contains 1% or less of: A, B" bounds each by 1 %, in no order', () => {
    expect(shares('WATER, CONTAINS 1% OR LESS OF: A, B')).toEqual(['WATER 98-100', 'A 0-1', 'B 0-1']);
  });
  test('[STM-4] check value 53: 3 % is no allowed threshold and is reported; it still bounds', () => {
    expect(codes('WATER, CONTAINS 3% OR LESS OF: SALT')).toEqual(['threshold-not-allowed']);
    expect(read('WATER, CONTAINS 3% OR LESS OF: SALT')).toBe('WATER, SALT≤3');
  });
  test('[STM-4] a fraction of a percent in words', () => {
    expect(read('SYRUP, LESS THAN 1/10 OF 1% SODIUM BENZOATE')).toBe('SYRUP, SODIUM BENZOATE≤0.1');
  });
  test('[STM-4] a percent sign typed as a 4 is told', () => {
    expect(read('RICE, 24 OR LESS OF BASIL')).toBe('RICE, BASIL≤2');
    expect(codes('RICE, 24 OR LESS OF BASIL')).toEqual(['threshold-damaged']);
  });
  test('[STM-4] the reach ends with its bracket and with the next component', () => {
    expect(read('HAM (PORK, CONTAINS 2% OR LESS OF SALT, SUGAR), BREAD')).toBe('HAM{PORK, SALT≤2, SUGAR≤2}, BREAD');
    expect(read('CRUST: FLOUR, LESS THAN 2% OF SALT. FILLING: APPLES')).toBe('@CRUST{FLOUR, SALT≤2}, @FILLING{APPLES}');
  });
  test('[STM-4] a clause with nothing behind it speaks of what stands before it', () => {
    expect(read('WATER, SALT (LESS THAN 2%), SUGAR')).toBe('WATER, SALT≤2, SUGAR');
  });
});

describe('shares', () => {
  test('[STM-5] the k-th ingredient is at most 1/k, the first at least an even share', () => {
    expect(shares('A, B, C, D')).toEqual(['A 25-100', 'B 0-50', `C 0-${100 / 3}`, 'D 0-25']);
  });
  test('[STM-5] parts share their whole', () => {
    const cheese = parseStatement('BREAD, CHEESE (MILK, SALT)').value.ingredients[1]!;
    expect(cheese.parts.map(part => part.sharePercent)).toEqual([
      { lo: 0, hi: 50 },
      { lo: 0, hi: 25 },
    ]);
  });
  test('[STM-12] a printed percentage holds to its rounding and bounds its neighbors', () => {
    expect(shares('OATS (60%), HONEY, SALT')).toEqual(['OATS 59.5-60.5', 'HONEY 0-50', `SALT 0-${100 / 3}`]);
    expect(codes('WATER, SUGAR, OATS (60%)')).toEqual(['percent-out-of-order']);
  });
  test('[STM-13] check value 50: up to 15 % of a solution is at most 13.0 % of the product (9 CFR 317.2)', () => {
    const solution = parseStatement('CHICKEN, CONTAINS UP TO 15% OF A SOLUTION OF WATER, SALT, SODIUM PHOSPHATES').value.ingredients[1]!;
    expect(outline({ ingredients: [solution] })).toBe('#up to 15% of a solution{WATER, SALT, SODIUM PHOSPHATES}');
    expect(solution.sharePercent.hi).toBeCloseTo(13.04, 2);
    expect(solution.sharePercent.lo).toBe(0);
  });
  test('[STM-11] a treatment tells nothing about its weight, and the first ingredient is bounded by it', () => {
    expect(read('POTATOES, SALT. COOKED IN VEGETABLE OIL.')).toBe('POTATOES, SALT, #COOKED IN{VEGETABLE OIL}');
    expect(shares('POTATOES, SALT. COOKED IN VEGETABLE OIL.')).toEqual(['POTATOES 0-100', 'SALT 0-50', 'COOKED IN 0-100']);
  });
  test('[STM-6] an ingredient that may be absent has no lower bound', () => {
    expect(shares('PALM OIL AND/OR CANOLA OIL')).toEqual(['PALM OIL AND/OR CANOLA OIL 100-100']);
    const parts = parseStatement('PALM OIL AND/OR CANOLA OIL').value.ingredients[0]!.parts;
    expect(parts.map(part => part.sharePercent.lo)).toEqual([0, 0]);
  });
});

describe('alternatives and options', () => {
  test('[STM-6] and/or, or, one or more of', () => {
    expect(read('POTATOES, CANOLA AND/OR SUNFLOWER OIL, SALT')).toBe(
      'POTATOES, #CANOLA AND/OR SUNFLOWER OIL{|CANOLA, |SUNFLOWER OIL}, SALT',
    );
    expect(read('VEGETABLE OIL (CONTAINS ONE OR MORE OF THE FOLLOWING: CORN, PALM OR CANOLA OIL), SALT')).toBe(
      'VEGETABLE OIL{|CORN, #|PALM OR CANOLA OIL{|PALM, |CANOLA OIL}}, SALT',
    );
    expect(read('LEAVENING (SODA AND/OR CALCIUM PHOSPHATE)')).toBe(
      '#LEAVENING{#|SODA AND/OR CALCIUM PHOSPHATE{|SODA, |CALCIUM PHOSPHATE}}',
    );
  });
  test('[STM-6] may contain makes optional ingredients to the end of its sentence', () => {
    expect(read('PORK, MAY CONTAIN SMOKE FLAVOR, SODIUM PHOSPHATES. SALT')).toBe('PORK, ?SMOKE FLAVOR, ?SODIUM PHOSPHATES, SALT');
  });
});

describe('remarks', () => {
  const remarks = (text: string): string[] => parseStatement(text).value.remarks.map(remark => `${remark.kind}: ${remark.text}`);
  test('[STM-7] an allergen line is told from a threshold and from ingredients', () => {
    expect(read('FLOUR, SALT. CONTAINS: WHEAT, SOY.')).toBe('FLOUR, SALT');
    expect(remarks('FLOUR, SALT. CONTAINS: WHEAT, SOY.')).toEqual(['allergens: CONTAINS: WHEAT, SOY']);
    expect(read('CHEESE (CONTAINS: MILK, SALT, ENZYMES)')).toBe('CHEESE{MILK, SALT, ENZYMES}');
    expect(read('FLAVOR (CONTAINS MILK)')).toBe('FLAVOR~CONTAINS MILK');
  });
  test('[STM-7] a may-contain line of allergens is no list of optional ingredients', () => {
    expect(read('OATS. MAY CONTAIN TRACES OF WHEAT AND NUTS')).toBe('OATS');
    expect(remarks('OATS. MAY CONTAIN TRACES OF WHEAT AND NUTS')).toEqual(['may-contain-allergens: MAY CONTAIN TRACES OF WHEAT AND NUTS']);
  });
  test('[STM-14] footnotes, facilities and claims', () => {
    expect(read('SALT*, OATS. *ORGANIC')).toBe('SALT, OATS');
    expect(remarks('SALT*, OATS. *ORGANIC')).toEqual(['footnote: ORGANIC']);
    expect(remarks('NUTS. MANUFACTURED ON EQUIPMENT THAT PROCESSES TREE NUTS')).toEqual([
      'facility: MANUFACTURED ON EQUIPMENT THAT PROCESSES TREE NUTS',
    ]);
    expect(remarks('RICE. NO PRESERVATIVES ADDED')).toEqual(['claim: NO PRESERVATIVES ADDED']);
  });
});

describe('notes, groups, components', () => {
  test('[STM-8] notes in brackets and without', () => {
    expect(read('SODIUM TRIPOLYPHOSPHATE (TO RETAIN MOISTURE), POTASSIUM SORBATE AS A PRESERVATIVE, BHT, TO MAINTAIN FRESHNESS')).toBe(
      'SODIUM TRIPOLYPHOSPHATE~TO RETAIN MOISTURE, POTASSIUM SORBATE~AS A PRESERVATIVE, BHT~TO MAINTAIN FRESHNESS',
    );
    expect(read('FRESHNESS PRESERVED BY SODIUM BISULFITE')).toBe('SODIUM BISULFITE~FRESHNESS PRESERVED BY');
  });
  test('[STM-9] function words head groups', () => {
    expect(read('LEAVENING (BAKING SODA, SODIUM ACID PYROPHOSPHATE), SALT')).toBe(
      '#LEAVENING{BAKING SODA, SODIUM ACID PYROPHOSPHATE}, SALT',
    );
    expect(read('ANTIOXIDANT: ASCORBIC ACID, SALT')).toBe('#ANTIOXIDANT{ASCORBIC ACID}, SALT');
  });
  test('[STM-10] components and the products of a variety pack', () => {
    expect(read('INGREDIENTS: LEMON INGREDIENTS: SUGAR, OIL. LIME INGREDIENTS: SUGAR, ACID')).toBe(
      '@LEMON{SUGAR, OIL}, @LIME{SUGAR, ACID}',
    );
  });
  test('[STM-18] "and" splits only where it joins ingredients', () => {
    expect(read('OIL, SALT AND SPICES')).toBe('OIL, SALT, SPICES');
    expect(read('SODIUM BENZOATE AND POTASSIUM SORBATE (PRESERVATIVES), SALT')).toBe(
      'SODIUM BENZOATE, POTASSIUM SORBATE~PRESERVATIVES, SALT',
    );
    expect(read('OIL, MONO AND DIGLYCERIDES')).toBe('OIL, MONO AND DIGLYCERIDES');
    expect(read('SUGAR, NATURAL AND ARTIFICIAL FLAVOR')).toBe('SUGAR, NATURAL AND ARTIFICIAL FLAVOR');
  });
});

describe('characters', () => {
  test('[STM-17] marks, tags, entities and damage are no part of a name', () => {
    expect(read('COCOA<sup>+</sup>, SALT&amp;PEPPER, VINEGAR\u00c3\u00a2\u00e2\u201a\u00ac, "GRADE A" MILK_x000D_')).toBe(
      'COCOA, SALT&amp;PEPPER, VINEGAR, GRADE A MILK',
    );
    expect(codes('DEXTROSE\u00c3\u00a2\u00e2\u201a\u00ac, SALT')).toEqual(['text-damaged']);
    expect(read('CRÈME FRAÎCHE, PÂTÉ')).toBe('CRÈME FRAÎCHE, PÂTÉ');
  });
  test('[STM-15] positions are code points', () => {
    const salt = parseStatement('🧂🧂, SALT').value.ingredients.at(-1)!;
    expect([salt.start, salt.end]).toEqual([4, 8]);
  });
});

describe('any text', () => {
  test('[STM-1] empty and cut texts are told', () => {
    expect(codes('')).toEqual(['statement-empty']);
    expect(codes(' .,;')).toEqual(['statement-empty']);
    expect(codes('WALNUTS, SALT,')).toEqual(['statement-cut-off']);
  });
  test('[STM-8] a lead-in without anything behind it is a name like any other', () => {
    expect(read('MILK, BHA AND PRESERVED BY')).toBe('MILK, BHA, PRESERVED BY');
    expect(read('MILK, PRESERVED BY AND BHT')).toBe('MILK, BHT~PRESERVED BY');
  });
  // Where looking ahead or back at each word would cost the square of the length: 300,000 characters take under a second.
  test.each([
    '*organic, ',
    '* a b c ',
    'contains milk, ',
    'a (b) or ',
    'extra virgin and ',
    'salt (soy) ',
    '(a, or ',
    'a or to preserve and ',
  ])('[STM-1] endless "%s" is read in linear time', unit => {
    expect(computed(() => parseStatement(unit.repeat(300_000 / unit.length))).milliseconds).toBeLessThan(5_000);
  });
  const pieces = fc.constantFrom(
    'SALT',
    'WATER',
    'CHEESE',
    'SODIUM',
    'PHOSPHATE',
    'and',
    'or',
    'and/or',
    ',',
    '.',
    ';',
    ':',
    '(',
    ')',
    '[',
    ']',
    '{',
    '}',
    '<',
    '>',
    '2%',
    'contains',
    'contains 2% or less of',
    'less than',
    'may contain',
    'one or more of',
    'ingredients',
    'MILK',
    '*',
    '"',
    '\u0000',
    '\ud800',
    '😀',
    'é',
    'Ã¢',
    '&amp;',
    '1e308',
    '0,5',
    '=1+1',
    '-',
    '/',
    'up to 12% of a solution of',
    'organic',
    'to preserve freshness',
    'cured with',
    'preserved by',
    'leavening',
    ' ',
    '\n',
  );
  const text = fc.oneof(
    fc.array(pieces, { maxLength: 60 }).map(parts => parts.join(' ')),
    fc.array(pieces, { maxLength: 60 }).map(parts => parts.join('')),
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc.string({ maxLength: 200 }),
  );
  test('[STM-1] never throws; parts lie inside their whole; shares are ranges from 0 to 100', () => {
    fc.assert(
      fc.property(text, given => {
        const { value } = parseStatement(given);
        const points = [...given].length;
        const check = (ingredients: typeof value.ingredients, from: number, to: number): void => {
          for (const { start, end, sharePercent, parts } of ingredients) {
            expect(start).toBeGreaterThanOrEqual(from);
            expect(end).toBeLessThanOrEqual(to);
            expect(end).toBeGreaterThan(start);
            expect(sharePercent.lo).toBeGreaterThanOrEqual(0);
            expect(sharePercent.lo).toBeLessThanOrEqual(sharePercent.hi);
            expect(sharePercent.hi).toBeLessThanOrEqual(100);
            check(parts, start, end);
          }
        };
        check(value.ingredients, 0, points);
      }),
      { numRuns: long ? 100_000 : 300 },
    );
  });
  test('[STM-1] printing what was read of any text never throws and never grows without bound', () => {
    fc.assert(
      fc.property(text, given => {
        const printed = printStatement(parseStatement(given).value);
        expect(printed.length).toBeLessThanOrEqual(40 + 20 * given.length);
      }),
      { numRuns: long ? 20_000 : 300 },
    );
  });
  const size = long ? 10_000_000 : 1_000_000;
  test(`[STM-1] one line of ${size} characters is read and told to be too long`, () => {
    const unit = 'ENRICHED FLOUR (WHEAT FLOUR, NIACIN [VITAMIN B3]), SALT, ';
    const { value, issues } = parseStatement(unit.repeat(Math.ceil(size / unit.length)));
    expect(value.ingredients.length).toBe(2 * Math.ceil(size / unit.length));
    expect(issues.map(issue => issue.code)).toEqual(['text-too-long', 'statement-cut-off']);
  });
});

describe('printing', () => {
  const name = fc.constantFrom(
    'WATER',
    'SALT',
    'WHEAT FLOUR',
    'Cheddar cheese',
    'SODIUM PHOSPHATES',
    'yeast extract',
    'VITAMIN B12',
    'COCOA PROCESSED WITH ALKALI',
    '2% MILK',
    'FD&C RED 40',
  );
  const note = fc.constantFrom('preservative', 'to retain moisture', 'from corn', 'for color', 'contains milk');
  const { list } = fc.letrec<{ item: string; list: string }>(tie => ({
    item: fc
      .tuple(name, fc.option(note), fc.boolean(), fc.option(tie('list'), { depthSize: 'small', maxDepth: 3 }))
      .map(
        ([words, why, organic, parts]) =>
          `${organic ? 'organic ' : ''}${words}${why === null ? '' : ` (${why})`}${parts === null ? '' : ` [${parts}]`}`,
      ),
    list: fc
      .tuple(
        fc.array(tie('item'), { minLength: 2, maxLength: 4 }),
        fc.array(tie('item'), { maxLength: 3 }),
        fc.constantFrom('2', '1', '0.5'),
      )
      .map(([head, tail, percent]) => head.join(', ') + (tail.length > 0 ? `, contains ${percent}% or less of: ${tail.join(', ')}` : '')),
  }));
  test('[STM-16] what is printed reads as the same tree', () => {
    fc.assert(
      fc.property(list, given => {
        const tree = parseStatement(given).value;
        const again = parseStatement(printStatement(tree)).value;
        expect(outline(again)).toBe(outline(tree));
        expect(again.ingredients.map(({ sharePercent }) => sharePercent)).toEqual(tree.ingredients.map(({ sharePercent }) => sharePercent));
      }),
      { numRuns: long ? 20_000 : 200 },
    );
  });
  test('[STM-16] one canonical form', () => {
    expect(
      printStatement(
        parseStatement('INGREDIENTS: FLOUR [WHEAT, NIACIN}; SALT. CONTAINS LESS THAN 2% OF YEAST, SOYBEAN OIL AND/OR PALM OIL.').value,
      ),
    ).toBe('FLOUR (WHEAT, NIACIN), SALT, contains 2% or less of: YEAST, SOYBEAN OIL AND/OR PALM OIL.');
  });
});
