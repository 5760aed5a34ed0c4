import { describe, expect, test } from 'vitest';
import { check } from '../../../test/checkWording.ts';
import { parseStatement } from './parseStatement.ts';

describe('claims', () => {
  test.each([
    'CONTAINS NO MILK',
    'CONTAINS ZERO SUGAR',
    'PRODUCT OF SPAIN',
    'CERTIFIED BY THE STATE',
    'CERTIFIED GLUTEN FREE',
    'CERTIFIED KOSHER',
    'CERTIFIED NON GMO',
    'FREE OF NUTS',
    'FREE FROM NUTS',
    'NOT A SOURCE OF IRON',
    'NOT FROM CHINA',
    'INGREDIENTS NOT FROM SPAIN',
    'NO SUGAR ADDED',
    'ADDS A TRIVIAL AMOUNT OF SODIUM',
    'DISTRIBUTED BY A SHOP',
  ])('[STM-14] %s, and what stands behind the comma is read on', claim => {
    check(`RICE. ${claim}, MACE`, 'RICE, MACE', `claim: ${claim}`);
  });
  test.each(['PRODUCT SALT', 'FREE RANGE EGG', 'NOT SALT', 'NO SALT ADDED BUTTER', 'NO 5 SALT', 'PACKED BY HAND', 'RICE (GLUTEN FREE)'])(
    '[STM-14] no claim: %s',
    name => {
      expect(parseStatement(`RICE. ${name}, MACE`).value.remarks).toEqual([]);
      expect(parseStatement(`RICE. ${name}, MACE`).value.ingredients.length).toBe(3);
    },
  );
  test('[STM-14] a claim ends before a bracket, a semicolon and the end of its own bracket', () => {
    check('RICE. PRODUCT OF SPAIN; MACE', 'RICE, MACE', 'claim: PRODUCT OF SPAIN');
    check('RICE (RYE. NOT FROM SPAIN), MACE', 'RICE{RYE}, MACE', 'claim: NOT FROM SPAIN');
    check('RICE (NOT FROM SPAIN), MACE', 'RICE~NOT FROM SPAIN, MACE');
  });
  test('[STM-14] organic oats are certified, and are there', () => {
    check('RICE. CERTIFIED ORGANIC OATS, SALT', 'RICE, organic CERTIFIED OATS, SALT');
  });
  test('[STM-14] a code has four digits or more, and nothing stands behind it', () => {
    check('RICE. 7302', 'RICE', 'claim: 7302');
    check('RICE. 7302.', 'RICE', 'claim: 7302');
    check('RICE. 730', 'RICE, 730');
    check('RICE. 7302 SALT', 'RICE, 7302 SALT');
    check('RICE. 73-02. SALT', 'RICE, 73-02, SALT');
    check('RICE, 7302', 'RICE, 7302');
  });
  test('[STM-14] what is in the package only', () => {
    check('BHT ADDED TO THE PACKAGE, SALT', 'SALT', 'claim: BHT ADDED TO THE PACKAGE');
    check('RICE, BHT ADDED PACKAGING, SALT', 'RICE, BHT ADDED PACKAGING, SALT');
    check('RICE, BHT ADDED TO PRESERVE FRESHNESS', 'RICE, BHT~ADDED TO PRESERVE FRESHNESS');
  });
});

describe('allergen lines', () => {
  test.each(['CONTAINS: MILK, WHEAT', 'CONTAINS MILK AND WHEAT', 'CONTAIN MILK', 'CONTAINS MILK (MILK PROTEIN), WHEAT'])(
    '[STM-7] %s',
    line => {
      check(`RICE. ${line}; SALT`, 'RICE, SALT', `allergens: ${line}`);
      check(`RICE (RYE. ${line}), SALT`, 'RICE{RYE}, SALT', `allergens: ${line}`);
    },
  );
  test('[STM-7] a figure, or a word that no allergen line holds, makes ingredients of it', () => {
    check('RICE. CONTAINS: MILK, 2 EGGS', 'RICE, MILK, 2 EGGS');
    check('RICE. CONTAINS: MILK (CASEIN), SALT', 'RICE, MILK{CASEIN}, SALT');
    check('RICE. CONTAINS: OTHER INGREDIENTS', 'RICE, OTHER INGREDIENTS');
    check('RICE. CONTAINS WATER, SALT', 'RICE, WATER, SALT');
    check('RICE, SALT CONTAINS WATER', 'RICE, SALT CONTAINS WATER');
  });
  test('[STM-7] another line may follow without a period', () => {
    check('RICE. CONTAINS WHEAT MAY CONTAIN MILK', 'RICE', 'allergens: CONTAINS WHEAT', 'may-contain-allergens: MAY CONTAIN MILK');
    check('RICE. CONTAINS WHEAT MADE IN A PLANT WITH NUTS.', 'RICE', 'allergens: CONTAINS WHEAT', 'facility: MADE IN A PLANT WITH NUTS');
  });
  test('[STM-8] a line that fills its bracket is a note, one behind a part a remark', () => {
    check('CHEESE (CONTAINS MILK.), SALT', 'CHEESE~CONTAINS MILK, SALT');
    check('CHEESE (RYE, CONTAINS: MILK), SALT', 'CHEESE{RYE}, SALT', 'allergens: CONTAINS: MILK');
  });
  test('[STM-7] a remark is quoted with its place', () => {
    const [remark] = parseStatement('RICE. CONTAINS: MILK. SALT').value.remarks;
    expect(remark).toEqual({ kind: 'allergens', text: 'CONTAINS: MILK', start: 6, end: 20 });
  });
});

describe('facilities', () => {
  test.each([
    'MANUFACTURED USING SHARED EQUIPMENT',
    'PROCESSED AT A PLANT WITH NUTS',
    'MADE IN A VERY OLD AND SMALL FACILITY',
    'THIS PRODUCT MAY HAVE BEEN ALSO AND PACKED ON LINES',
  ])('[STM-14] %s', sentence => {
    check(`RICE. ${sentence}. MACE`, 'RICE, MACE', `facility: ${sentence}`);
  });
  test('[STM-14] a facility sentence ends with its bracket, and brackets in it are part of it', () => {
    const sentence = 'MADE IN A PLANT WITH MILK (PROTEIN) AND NUTS';
    check(`RICE (RYE, MACE. ${sentence}), SALT`, 'RICE{RYE, MACE}, SALT', `facility: ${sentence}`);
  });
  test('[STM-14] without a word for a place it is no facility sentence', () => {
    check('RICE. PACKED IN WATER, SALT', 'RICE, PACKED IN WATER, SALT');
    check(
      'RICE. MADE IN SMALL BATCHES BY OUR OWN FRIENDLY COOKS IN THIS FACILITY',
      'RICE, #MADE IN{SMALL BATCHES BY OUR OWN FRIENDLY COOKS IN THIS FACILITY}',
    );
  });
});

describe('footnotes, section 7 of the measurements', () => {
  test('[STM-14] a footnote may follow the last name, a period or another mark', () => {
    check('RICE*, OATS*. *ORGANIC', 'RICE, OATS', 'footnote: ORGANIC');
    check('RICE*, OATS. **ORGANIC', 'RICE, OATS', 'footnote: ORGANIC');
    check('RICE*, OATS *TRIVIAL SOURCE OF FAT. MACE', 'RICE, OATS, MACE', 'footnote: TRIVIAL SOURCE OF FAT');
    check('RICE*, OATS. *NOT FROM SPAIN', 'RICE, OATS', 'footnote: NOT FROM SPAIN');
    check('RICE*, OATS *NOT FROM SPAIN, MACE', 'RICE, OATS NOT FROM SPAIN, MACE');
  });
  test('[STM-14] "organic" opens a footnote only where a few words stand alone', () => {
    check('RICE, *ORGANIC OATS, MACE', 'RICE, organic OATS, MACE');
    check('RICE*, OATS *ORGANIC MACE', 'RICE, organic OATS MACE');
    check('*ORGANIC, RICE', 'ORGANIC, RICE');
    check('RICE*, OATS. *ORGANIC ONE TWO. MACE', 'RICE, OATS, MACE', 'footnote: ORGANIC ONE TWO');
    check('RICE*, OATS. *ORGANIC ONE TWO THREE. MACE', 'RICE, OATS, organic ONE TWO THREE, MACE');
    check('RICE*, OATS. *ORGANIC ONE TWO THREE.', 'RICE, OATS', 'footnote: ORGANIC ONE TWO THREE');
    check('RICE. *ORGANIC ONE TWO THREE. **FAIR TRADE', 'RICE', 'footnote: ORGANIC ONE TWO THREE', 'footnote: FAIR TRADE');
    check('RICE*, OATS. *A B C D E F', 'RICE, OATS', 'footnote: A B C D E F');
    check('RICE*, OATS. *A B C D E F G', 'RICE, OATS, A B C D E F G');
  });
  test('[STM-14] in a bracket a footnote ends with it; alone there it is a note', () => {
    check('RICE (OATS, RYE *FAIR TRADE CERTIFIED), MACE', 'RICE{OATS, RYE}, MACE', 'footnote: FAIR TRADE CERTIFIED');
    check('RICE (*FAIR TRADE CERTIFIED), MACE', 'RICE~FAIR TRADE CERTIFIED, MACE');
  });
});
