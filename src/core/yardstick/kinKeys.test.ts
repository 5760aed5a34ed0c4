import { expect, test } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { avoidedName, isKnownKin, kinFinder, kinKeys, kinTitle } from './ingredientKin.ts';

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
  // Care rules 6: the nine major allergens, gluten, pork, beef and lactose in Spanish.
  ['leche', ['milk']],
  ['alergia a la leche', ['milk']],
  ['intolerancia a la lactosa', ['milk']],
  ['Huevos', ['egg']],
  ['pescado', ['fish']],
  ['mariscos', ['shellfish']],
  ['mariscos (crustáceos)', ['shellfish']],
  ['nueces de árbol', ['tree-nut']],
  ['alergia a los frutos secos', ['tree-nut']],
  ['alergia al cacahuate', ['peanut']],
  ['maní', ['peanut']],
  ['alérgica al maní y a la soya', ['peanut', 'soy']],
  ['trigo', ['wheat']],
  ['ajonjolí', ['sesame']],
  ['enfermedad celíaca', ['gluten']],
  ['sin cerdo', ['pork']],
  ['carne de res', ['beef']],
  ['cacahuates, leche o huevo', ['peanut', 'milk', 'egg']],
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

test.each([
  ['peanut', 'ARROZ, MANÍ, SAL.', 'named'],
  ['peanut', 'ARROZ, CACAHUATES.', 'named'],
  ['milk', 'LECHE PASTEURIZADA, CUAJO, SAL.', 'named'],
  ['milk', 'LECHE DE COCO, AGUA.', 'none'],
  ['milk', 'MANTEQUILLA DE MANÍ.', 'none'],
  ['shellfish', 'CAMARONES, AGUA.', 'named'],
  ['tree-nut', 'NUEZ MOSCADA, PIMIENTA.', 'none'],
  ['sesame', 'SEMILLAS DE AJONJOLÍ.', 'named'],
  ['beef', 'CARNE DE RES, SAL.', 'named'],
  ['beef', 'FRESAS, AGUA.', 'none'],
])('[YST-15] %s in a Spanish statement “%s” is %s', (key, statement, kind) => {
  expect(kinFinder(key)(parseStatement(statement).value).kind).toBe(kind);
});

test.each([
  ['peanut allergy', 'es', 'cacahuate (maní)'],
  ['lactose intolerance', 'es', 'lactosa'],
  ['alergia al maní', 'es', 'alergia al maní'],
  ['alergia al maní', 'en', 'peanuts'],
  ['peanut allergy', 'en', 'peanut allergy'],
  ['seafood', 'es', 'pescado, mariscos (crustáceos)'],
  ['kiwi', 'es', 'kiwi'],
  // One part that is not known, one in the page's own language, a name with a hyphen.
  ['milk, kiwi', 'es', 'milk, kiwi'],
  ['leche, peanuts', 'en', 'milk, peanuts'],
  ['leche, peanuts', 'es', 'leche, cacahuate (maní)'],
  ['tree-nut', 'es', 'nueces de árbol (frutos secos)'],
] as const)('[YST-38] “%s” on a page in %s is “%s”', (words, language, told) => {
  expect(avoidedName(words, language)).toBe(told);
});

test('[YST-38] a word is known where it is kin or a food of the composition table', () => {
  expect(['peanut', 'kiwi', 'sulfa', 'preservatives'].map(isKnownKin)).toEqual([true, true, false, false]);
  expect(['peanut', 'kiwi'].map(kinTitle)).toEqual(['peanuts', 'kiwi']);
});

test.each([
  ['wheat', 'RICE (FROM WHEAT).', 'named', 'FROM WHEAT'],
  ['soy', 'RICE. CONTAINS: SOY.', 'named', undefined],
  ['soy', 'RICE. MAY CONTAIN SOY.', 'possible', undefined],
  // A claim and a footnote say nothing of it.
  ['gluten', 'RICE. GLUTEN FREE.', 'none', undefined],
  ['garlic', 'RICE, FREE OF GARLIC.', 'none', undefined],
  ['garlic', 'RICE, NO ADDED GARLIC.', 'none', undefined],
  ['garlic', 'RICE. NO GARLIC, GARLIC SALT.', 'named', undefined],
  ['garlic', 'RICE, GARLIC SALT, SPICES.', 'named', 'GARLIC SALT'],
  ['garlic', 'RICE, SPICES, GARLIC SALT.', 'named', 'GARLIC SALT'],
  ['garlic', 'SOUP BASE (RICE, GARLIC AND/OR ONION).', 'possible', undefined],
  // Only one of several, unless each of them is it.
  ['peanut', 'RICE, PEANUTS AND/OR ALMONDS.', 'possible', 'PEANUTS AND/OR ALMONDS'],
  ['peanut', 'RICE, ALMONDS OR PEANUTS.', 'possible', undefined],
  ['milk', 'RICE, BUTTER AND/OR CREAM.', 'named', 'BUTTER AND/OR CREAM'],
  ['milk', 'MILK (SKIM MILK AND/OR WHOLE MILK).', 'named', 'MILK'],
  ['soy', 'SOYBEAN OIL (SOYBEANS OR RAPESEED).', 'named', 'SOYBEAN OIL'],
  ['gluten', 'OATS.', 'possible', 'OATS'],
  ['milk', 'COCONUT MILK, MILK.', 'named', 'MILK'],
])('[YST-15] %s in “%s” is %s', (key, statement, kind, words) => {
  const presence = kinFinder(key)(parseStatement(statement).value);
  expect(presence).toMatchObject(words === undefined ? { kind } : { kind, words });
});
