import { describe, expect, test } from 'vitest';
import { check } from '../../../test/checkWording.ts';
import { parseStatement } from './parseStatement.ts';

/** Ways of wording that were counted in 9,541 real statements of FoodData Central branded foods (USDA, public domain), each as a text of our own. */
describe('thresholds and percentages', () => {
  test.each([
    'MILK, CONTAINS 2% OR LESS THAN THE FOLLOWING: SALT, GUAR GUM',
    'MILK, CONTAINS 2% LESS OF EACH OF THE FOLLOWING: SALT, GUAR GUM',
    'MILK, CONTAINS 2% OF LESS OF SALT, GUAR GUM',
    'MILK, CONTAINS TWO PERCENT (2%) OR LESS OF: SALT, GUAR GUM',
    'MILK, CONTAINS 2%R OR LESS OF: SALT, GUAR GUM',
  ])('[STM-4] a slip in the wording: %s', text => {
    check(text, 'MILK, SALT≤2, GUAR GUM≤2');
  });
  test.each([
    'MILK, AND NOT MORE THAN 2% EACH SALT, GUAR GUM',
    'MILK, WITH NO MORE THAN 2% SALT, GUAR GUM',
    'MILK, UP TO 2% OF SALT, GUAR GUM',
    'MILK, NOT EXCEEDING 2%: SALT, GUAR GUM',
    'MILK, CONTAINS MAX. 2% OF SALT, GUAR GUM',
    'MILK, 2% MAX. OF SALT, GUAR GUM',
  ])('[STM-4] a bound by another word: %s', text => {
    check(text, 'MILK, SALT≤2, GUAR GUM≤2');
  });
  test('[STM-4] what the meat holds at most is told of the meat, whole', () => {
    check('GROUND PORK (NO MORE THAN 30% FAT), WATER', 'GROUND PORK~NO MORE THAN 30% FAT, WATER');
    check('GROUND BEEF (NOT MORE THAN 20% FAT), SALT', 'GROUND BEEF~NOT MORE THAN 20% FAT, SALT');
  });
  test('[STM-13] an amount of marinade bounds none of what is in it', () => {
    check('PORK (MARINATED UP TO 10% WITH WATER, SALT)', 'PORK{MARINATED UP TO 10% WITH WATER, SALT}');
    check('TURKEY CONTAINING UP TO 30% OF A SOLUTION OF WATER, SALT', 'TURKEY, #up to 30% of a solution{WATER, SALT}');
  });
  test('[STM-14] "no more" without a figure is a claim', () => {
    check('RICE. NO MORE LUMPS.', 'RICE', 'claim: NO MORE LUMPS');
  });
  test('[STM-4] fractions of a percent in words and digits', () => {
    check('MILK, CONTAINS LESS THAN ONE HALF OF ONE PERCENT OF SALT', 'MILK, SALT≤0.5');
    check('MILK, LESS THAN ONE TENTH OF 1% GUAR GUM', 'MILK, GUAR GUM≤0.1');
    check('MILK, GUAR GUM (LESS THAN 1/10 OF 1%), SALT', 'MILK, GUAR GUM≤0.1, SALT');
  });
  test('[STM-12] a fraction of a percent before a name is its printed percentage', () => {
    check('PLUMS, 1/10TH OF 1% SODIUM BENZOATE (AS A PRESERVATIVE), SALT', 'PLUMS, SODIUM BENZOATE=0.1~AS A PRESERVATIVE, SALT');
    check('PLUMS, 1/10 PERCENT SODIUM BENZOATE AS A PRESERVATIVE', 'PLUMS, SODIUM BENZOATE=0.1~AS A PRESERVATIVE');
  });
  test('[STM-1] an endless chain of fractions is no trouble', () => {
    expect(() => parseStatement('1/2 of '.repeat(50_000))).not.toThrow();
  });
  test('[STM-13] "in a solution of" belongs to the clause, not to the meat', () => {
    check('VEAL CUTLET IN A 10% SOLUTION OF WATER, SALT', 'VEAL CUTLET, #up to 10% of a solution{WATER, SALT}');
  });
});

describe('alternatives and conditions', () => {
  test('[STM-6] one or more of a named thing', () => {
    check('RICE, CONTAINS ONE OR MORE OF THE FOLLOWING OILS: CORN, OLIVE. SALT', 'RICE, OILS{|CORN, |OLIVE}, SALT');
    check('RICE, ONE OR MORE OF THE FOLLOWING EMULSIFIERS: LECITHIN, GUAR GUM', 'RICE, #EMULSIFIERS{|LECITHIN, |GUAR GUM}');
    check('LEAF MIX (MAY CONTAIN SOME OR ALL OF THE FOLLOWING GREENS: CRESS, CHARD), SALT', 'LEAF MIX{?GREENS{?CRESS, ?CHARD}}, SALT');
  });
  test('[STM-6] outside brackets, the item with "or" is the last to choose from', () => {
    check('RICE, CONTAINS ONE OR MORE OF THE FOLLOWING OILS: CORN, SOY, OR PALM, SALT', 'RICE, OILS{|CORN, |SOY, |PALM}, SALT');
  });
  test.each(['ONE OR MORE OR THE FOLLOWING:', 'ONE OF MORE OF THE FOLLOWING:', 'SOME OR ALL OF:'])(
    '[STM-6] a slip or variant of the clause: %s',
    words => check(`RICE, OIL (${words} CORN, OLIVE), SALT`, 'RICE, OIL{|CORN, |OLIVE}, SALT'),
  );
  test('[STM-6] "and or" without a slash', () => {
    check('RICE, OIL (CORN OIL AND OR OLIVE OIL)', 'RICE, OIL{#|CORN OIL AND/OR OLIVE OIL{|CORN OIL, |OLIVE OIL}}');
  });
  test('[STM-6] what stands under a condition may be absent', () => {
    check('CURD (MILK, ANNATTO [IF COLORED]), SALT', 'CURD{MILK, ?ANNATTO~IF COLORED}, SALT');
    check('CURD (MILK, ANNATTO IF COLORED), SALT', 'CURD{MILK, ?ANNATTO~IF COLORED}, SALT');
    check('CURD, ANNATTO (FOR COLOR, IF COLORED), SALT', 'CURD, ?ANNATTO~FOR COLOR~IF COLORED, SALT');
    check(
      'GELATIN, SUGAR, IF LEMON: YELLOW 5; IF PLUM: RED 40, BLUE 1.',
      'GELATIN, SUGAR, #?IF LEMON{YELLOW 5}, #?IF PLUM{RED 40, BLUE 1}',
    );
  });
  test('[STM-8] "or" inside a note makes no alternatives', () => {
    check('PEARS, CITRIC ACID ADDED TO PROTECT COLOR OR FLAVOR, SALT', 'PEARS, CITRIC ACID~ADDED TO PROTECT COLOR OR FLAVOR, SALT');
    check('UNCURED HAM - NO NITRATES OR NITRITES ADDED (PORK, SALT), RYE', 'UNCURED HAM~NO NITRATES OR NITRITES ADDED{PORK, SALT}, RYE');
  });
});

describe('notes', () => {
  test('[STM-8] a function behind a comma or a dash', () => {
    check('COCOA, LECITHIN, AN EMULSIFIER, SALT', 'COCOA, LECITHIN~AN EMULSIFIER, SALT');
    check('COCOA, LECITHIN - AN EMULSIFIER, SALT', 'COCOA, LECITHIN~AN EMULSIFIER, SALT');
    check('COCOA, LECITHIN-AN EMULSIFIER, SALT', 'COCOA, LECITHIN~AN EMULSIFIER, SALT');
    check('GRADE A MILK, VITAMIN A, SALT', 'GRADE A MILK, VITAMIN A, SALT');
  });
  test('[STM-8] whence and how, in brackets', () => {
    check(
      'MALTODEXTRIN (MADE FROM CORN), POLLOCK (SEA CERTIFIED), CHIPS (DAIRY AND SOY FREE)',
      'MALTODEXTRIN~MADE FROM CORN, POLLOCK~SEA CERTIFIED, CHIPS~DAIRY AND SOY FREE',
    );
    check('CHEESE (MADE FROM MILK, SALT), RYE', 'CHEESE{#MADE FROM{MILK, SALT}}, RYE');
  });
});

describe('headings', () => {
  test('[STM-10] titles in front of everything', () => {
    check('MADE FROM: SUGAR, RYE FLOUR', 'SUGAR, RYE FLOUR');
    check('INGREDIENTS CONSIST OF SUGAR, RYE FLOUR', 'SUGAR, RYE FLOUR');
    check('INGREDIENTS SUGAR, RYE FLOUR', 'SUGAR, RYE FLOUR');
    check('INGREDIENT STATEMENT: SUGAR, RYE FLOUR', 'SUGAR, RYE FLOUR');
  });
  test('[STM-10] "contains" is no part of a component\'s name', () => {
    check('CRUMB SECTION CONTAINS: RYE, SALT. GLAZE ALSO CONTAINS: SUGAR, AGAR', '@CRUMB SECTION{RYE, SALT}, @GLAZE{SUGAR, AGAR}');
  });
  test('[STM-2] [STM-10] what a heading lists in brackets is not lost', () => {
    check('GLAZE (HONEY, SALT): SUGAR, AGAR', '@GLAZE{HONEY, SALT, SUGAR, AGAR}');
    check('RICE, ONE OR MORE OF THE FOLLOWING OILS (CORN, SOY): PALM', 'RICE, OILS{|CORN, |SOY, |PALM}');
  });
  test('[STM-11] a treatment with a solution', () => {
    check('SAUSAGE. TREATED WITH SOLUTION OF POTASSIUM SORBATE', 'SAUSAGE, #TREATED WITH{SOLUTION OF POTASSIUM SORBATE}');
  });
});

describe('remarks', () => {
  test('[STM-14] facilities, whatever the verb', () => {
    check('RICE. MADE IN A FACILITY THAT PROCESSES WHEAT.', 'RICE', 'facility: MADE IN A FACILITY THAT PROCESSES WHEAT');
    check('RICE. PREPARED IN A KITCHEN THAT USES MILK.', 'RICE', 'facility: PREPARED IN A KITCHEN THAT USES MILK');
    check('RICE. PRODUCED IN A FACILITY WITH MILK, EGG.', 'RICE', 'facility: PRODUCED IN A FACILITY WITH MILK, EGG');
    check(
      'RICE. MAY HAVE BEEN MADE ON EQUIPMENT THAT PROCESSES NUTS',
      'RICE',
      'facility: MAY HAVE BEEN MADE ON EQUIPMENT THAT PROCESSES NUTS',
    );
    check('RICE. THIS PRODUCT WAS PACKED IN A PLANT WITH MILK', 'RICE', 'facility: THIS PRODUCT WAS PACKED IN A PLANT WITH MILK');
    check('RICE (MADE IN A FACILITY THAT PROCESSES WHEAT), SALT', 'RICE~MADE IN A FACILITY THAT PROCESSES WHEAT, SALT');
  });
  test('[STM-7] allergen lines that are glued or have a heading', () => {
    check(
      'RICE, PEPPERCONTAINS: MILK. MAY CONTAIN WHEAT',
      'RICE, PEPPER',
      'allergens: CONTAINS: MILK',
      'may-contain-allergens: MAY CONTAIN WHEAT',
    );
    check(
      'RICE. CONTAINS: SOYMAY CONTAIN TRACES OF WHEAT',
      'RICE',
      'allergens: CONTAINS: SOY',
      'may-contain-allergens: MAY CONTAIN TRACES OF WHEAT',
    );
    check('RICE. ALLERGENS: MILK, WHEAT.', 'RICE', 'allergens: ALLERGENS: MILK, WHEAT');
    check('RICE. ALLERGY INFORMATION: CONTAINS MILK', 'RICE', 'allergens: ALLERGY INFORMATION: CONTAINS MILK');
    check('RICE. ALLERGY WARNING: MAY CONTAIN MILK', 'RICE', 'may-contain-allergens: ALLERGY WARNING: MAY CONTAIN MILK');
  });
  test('[STM-14] what is said of the package, the list and the product', () => {
    check(
      'RICE. BHT ADDED TO PACKAGING MATERIAL TO PRESERVE FRESHNESS',
      'RICE',
      'claim: BHT ADDED TO PACKAGING MATERIAL TO PRESERVE FRESHNESS',
    );
    check('RICE, KALE. INGREDIENTS MAY VARY BY SEASON', 'RICE, KALE', 'claim: INGREDIENTS MAY VARY BY SEASON');
    check('RICE, SALT. GLUTEN FREE.', 'RICE, SALT', 'claim: GLUTEN FREE');
    check('GLUTEN FREE OATS, SALT', 'GLUTEN FREE OATS, SALT');
    check('RICE, SALT. CERTIFIED ORGANIC BY THE STATE', 'RICE, SALT', 'claim: CERTIFIED ORGANIC BY THE STATE');
  });
  test('[STM-14] a code number at the end', () => {
    check('RICE, ENZYMES. 730264', 'RICE, ENZYMES', 'claim: 730264');
    check('RICE, ENZYMES. 7302-64', 'RICE, ENZYMES', 'claim: 7302-64');
    check('RICE, YELLOW 5', 'RICE, YELLOW 5');
  });
});

describe('characters', () => {
  test('[STM-3] "D,L-" is one prefix, a comma behind vitamin D is one', () => {
    check('IRON, D,L-ALPHA TOCOPHEROL, SALT', 'IRON, D,L-ALPHA TOCOPHEROL, SALT');
    check('VITAMIN D,L-CARNITINE', 'VITAMIN D, L-CARNITINE');
  });
  test('[STM-17] footnote digits that several words carry are marks, digits of names are not', () => {
    check(
      'CURD1 (WATER, BEANS1), OIL2, VITAMIN B12, VITAMIN D3, BLUE 1, E330',
      'CURD{WATER, BEANS}, OIL2, VITAMIN B12, VITAMIN D3, BLUE 1, E330',
    );
    check('CURD1, BEANS1. 1ORGANIC', 'CURD, BEANS', 'footnote: ORGANIC');
    check('OMEGA3, BEANS', 'OMEGA3, BEANS');
  });
});
