import { expect, test } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { kinFinder, kinKeys } from './ingredientKin.ts';

test.each([
  ['Tree nuts', ['tree-nut']],
  ['tree nut allergy (severe)', ['tree-nut']],
  ['nuts', ['tree-nut', 'peanut']],
  ['Milk allergy', ['milk']],
  ['lactose intolerance', ['milk']],
  ['dairy products', ['milk']],
  ['Dairy and soya', ['milk', 'soy']],
  ['soybeans', ['soy']],
  ['eggs', ['egg']],
  ['peanuts', ['peanut']],
  ['sesame seeds', ['sesame']],
  ['shellfish', ['shellfish']],
  ['seafood', ['fish', 'shellfish']],
  ['celiac disease', ['gluten']],
  ['no pork', ['pork']],
  ['allergic to shrimp, eggs', ['shrimp', 'egg']],
  ['kiwis', ['kiwis']],
  ['allergy', ['allergy']],
])('[YST-38] “%s” as a client says it', (words, keys) => {
  expect(kinKeys(words)).toEqual(keys);
});

// The nine major food allergens of the US (FALCPA 2004; FASTER Act 2021 for sesame), each by a name that does not hold the word.
test.each([
  ['milk', 'WATER, SODIUM CASEINATE.'],
  ['egg', 'FLOUR, ALBUMEN.'],
  ['fish', 'WATER, ANCHOVIES, SALT.'],
  ['shellfish', 'CLAMS, POTATOES.'],
  ['tree-nut', 'SUGAR, PECANS.'],
  ['peanut', 'SUGAR. CONTAINS: PEANUTS.'],
  ['wheat', 'DURUM SEMOLINA.'],
  ['soy', 'TOFU, WATER.'],
  ['sesame', 'CHICKPEAS, TAHINI.'],
  ['gluten', 'RICE, MALT EXTRACT.'],
  ['pork', 'BEANS, BACON.'],
])('[YST-15] %s is found in “%s”', (key, statement) => {
  expect(kinFinder(key)(parseStatement(statement).value).kind).toBe('named');
});

test.each([
  ['tree-nut', 'PEANUTS, COCONUT, NUTMEG, WATER CHESTNUTS.'],
  ['gluten', 'RICE, MALTODEXTRIN, BUCKWHEAT.'],
  ['pork', 'TURKEY HAM (TURKEY, WATER), HAMBURGER.'],
])('[YST-15] %s is not in “%s”', (key, statement) => {
  expect(kinFinder(key)(parseStatement(statement).value).kind).toBe('none');
});

test('[YST-15] oats may carry gluten, unless they say that they do not', () => {
  expect(kinFinder('gluten')(parseStatement('WHOLE GRAIN ROLLED OATS, SALT.').value).kind).toBe('possible');
  expect(kinFinder('gluten')(parseStatement('GLUTEN-FREE ROLLED OATS, SALT.').value).kind).toBe('none');
});

test('[YST-38] silence about a word that the program does not know proves nothing; a plain ingredient is looked for by its name', () => {
  const statement = parseStatement('TURKEY, WATER, STRAWBERRIES.').value;
  expect(kinFinder('sulfa')(statement).kind).toBe('unknown');
  expect(kinFinder('leche')(statement).kind).toBe('unknown');
  expect(kinFinder('kiwi')(statement).kind).toBe('none');
  expect(kinFinder('strawberry')(statement).kind).toBe('named');
  expect(kinFinder('strawberries')(statement).kind).toBe('named');
});
