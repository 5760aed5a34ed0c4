import { describe, expect, test } from 'vitest';
import { check } from '../../../test/checkWording.ts';
import { parseStatement } from './parseStatement.ts';

describe('titles and components', () => {
  test.each([
    'INGREDIENTS:',
    'INGREDIENT:',
    'INGREDIENT',
    'THE INGREDIENTS:',
    'LIST OF INGREDIENTS:',
    'OTHER INGREDIENTS:',
    'ALL INGREDIENTS:',
    'PRODUCT INGREDIENTS:',
    'INGREDIENTS CONSISTS OF',
    'MADE OF:',
    'MADE WITH:',
  ])('[STM-10] a title in front of everything: %s', title => {
    check(`${title} SUGAR, RYE`, 'SUGAR, RYE');
  });
  test('[STM-10] an owner makes a component of it, and so does what stands before', () => {
    check('ORGANIC INGREDIENTS: SUGAR, RYE', '@ORGANIC{SUGAR, RYE}');
    check('GLAZE INGREDIENT: SUGAR. TOP INGREDIENT STATEMENT: RYE', '@GLAZE{SUGAR}, @TOP{RYE}');
    expect(parseStatement('SALT. INGREDIENTS: SUGAR, RYE').value.ingredients).toMatchObject([
      { kind: 'ingredient', name: 'SALT' },
      { kind: 'component', name: 'INGREDIENTS', start: 6, end: 29 },
    ]);
  });
  test('[STM-10] a heading has nine words at most', () => {
    check('A B C D E F G H I: SUGAR, RYE', '@A B C D E F G H I{SUGAR, RYE}');
    expect(parseStatement('A B C D E F G H I J: SUGAR, RYE').value.ingredients.map(({ name }) => name)).toEqual([
      'A B C D E F G H I J',
      'SUGAR',
      'RYE',
    ]);
  });
  test('[STM-15] a component reaches from its heading to the end of its last part', () => {
    const [crust, filling] = parseStatement('CRUST: RYE, SALT (SEA, IODINE). FILLING: PLUMS (DRIED).').value.ingredients;
    expect([crust!.start, crust!.end, filling!.start, filling!.end]).toEqual([0, 30, 32, 54]);
  });
  test('[STM-5] components and their parts stand in no order among each other', () => {
    const shares = parseStatement('CRUST: RYE, SALT. FILLING: PLUMS.').value.ingredients;
    expect(shares.map(({ sharePercent }) => sharePercent)).toEqual([
      { lo: 0, hi: 100 },
      { lo: 0, hi: 100 },
    ]);
  });
});

describe('groups', () => {
  test('[STM-9] a plural heads the rest of its sentence, a singular one ingredient', () => {
    check('EMULSIFIERS: LECITHIN, GUM. SALT', '#EMULSIFIERS{LECITHIN, GUM}, SALT');
    check('EMULSIFIERS: LECITHIN, GUM; SALT', '#EMULSIFIERS{LECITHIN, GUM}, SALT');
    check('EMULSIFIER: LECITHIN, GUM', '#EMULSIFIER{LECITHIN}, GUM');
  });
  test('[STM-9] a word that only accompanies a function heads no group', () => {
    check('NATURAL: LECITHIN, GUM', '@NATURAL{LECITHIN, GUM}');
    check('ACID: LECITHIN, GUM', '@ACID{LECITHIN, GUM}');
    check('RICE, COLOR (RED 40), MACE', 'RICE, #COLOR{RED 40}, MACE');
    check('RICE, MINERAL MIX (NIACIN, IRON), MACE', 'RICE, #MINERAL MIX{NIACIN, IRON}, MACE');
    check('RICE, VITAMIN MIX (NIACIN, IRON), MACE', 'RICE, VITAMIN MIX{NIACIN, IRON}, MACE');
  });
  test('[STM-11] treatments', () => {
    check('POTATOES. FRIED IN OIL, SALT. MACE', 'POTATOES, #FRIED IN{OIL, SALT}, MACE');
    check('BREADED BY: FLOUR, SALT. OIL', '#BREADED BY{FLOUR, SALT}, OIL');
    check('PORK. CURED FROM WATER. MACE', 'PORK, #CURED FROM{WATER}, MACE');
    check('PORK CURED WITH (WATER, SALT), MACE', 'PORK, #CURED WITH{WATER, SALT}, MACE');
    check('PORK (CURED WITH: WATER, SALT), MACE', 'PORK{#CURED WITH{WATER, SALT}}, MACE');
    check('PORK CURED WITH WATER, SALT', 'PORK, #CURED WITH{WATER, SALT}');
  });
  test('[STM-11] inside a name, or with nothing behind it, a treatment is part of the name', () => {
    check('POTATOES FRIED IN OIL, SALT', 'POTATOES FRIED IN OIL, SALT');
    check('PORK CURED WITHOUT WATER, SALT', 'PORK CURED WITHOUT WATER, SALT');
    check('PORK. CURED WITH', 'PORK, CURED WITH');
    check('PORK. CURED WITH, SALT', 'PORK, CURED WITH, SALT');
  });
  test('[STM-6] a condition needs what it asks for', () => {
    check('IF LEMON: YELLOW 5', '#?IF LEMON{YELLOW 5}');
    check('IF: YELLOW 5', '@IF{YELLOW 5}');
    check('GELATIN, IF LEMON (YELLOW 5, RED 40), SALT', 'GELATIN, #?IF LEMON{YELLOW 5, RED 40}, SALT');
  });
});

describe('solutions in meat, 9 CFR 317.2(e)(2)', () => {
  test.each([
    ['ENHANCED WITH UP TO 8% SOLUTION OF', 8],
    ['MARINATED WITH UP TO 12% FLAVOR SOLUTION:', 12],
    ['INJECTED WITH 10% SOLUTION CONTAINING', 10],
    ['CONTAINS UP TO 12.5% OF A SOLUTION CONSISTING OF', 12.5],
    ['WITH APPROXIMATELY 10% ADDED SOLUTION OF', 10],
  ])('[STM-13] %s', (wording, percent) => {
    check(`PORK, ${wording} WATER, SALT; MACE`, `PORK, #up to ${percent}% of a solution{WATER, SALT}, MACE`);
    const [, solution] = parseStatement(`PORK, ${wording} WATER, SALT; MACE`).value.ingredients;
    // p % of the raw weight is p ÷ (100 + p) of the product.
    expect(solution!.sharePercent.hi).toBeCloseTo((100 * percent) / (100 + percent), 9);
  });
  test('[STM-13] no percent sign, or another word for it: no solution', () => {
    check('PORK, CONTAINS UP TO 12 OF A SOLUTION OF WATER, SALT', 'PORK, UP TO 12 OF A SOLUTION OF WATER, SALT');
    check('PORK, CONTAINS UP TO 12% OF A BROTH OF WATER, SALT', 'PORK, A BROTH OF WATER≤12, SALT≤12');
  });
});
