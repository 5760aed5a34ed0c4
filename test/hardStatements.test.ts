import { describe, expect, test } from 'vitest';
import { findAdditives } from '#core/additive/findAdditives.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { outline } from './outline.ts';

/**
 * The twenty hardest kinds of wording met in 4,500 real statements (FoodData Central branded foods), each as a minimal
 * text of our own: what the tree looks like, and which phosphate and potassium additives are found.
 */
const kinds: readonly { readonly kind: string; readonly text: string; readonly tree: string; readonly additives: readonly string[] }[] = [
  {
    kind: 'a bracket closed by another kind, deep inside',
    text: 'PIE (CRUST [FLOUR, WATER), FILLING [CHEESE {MILK, SODIUM PHOSPHATE}]), SALT',
    tree: 'PIE{CRUST{FLOUR, WATER}, FILLING{CHEESE{MILK, SODIUM PHOSPHATE}}}, SALT',
    additives: ['sodium-phosphates'],
  },
  {
    kind: 'an opening bracket that never closes swallows the rest, and nothing is lost',
    text: 'FLOUR (WHEAT, NIACIN, SALT. CONTAINS 2% OR LESS OF: MONOCALCIUM PHOSPHATE',
    tree: 'FLOUR{WHEAT, NIACIN, SALT, MONOCALCIUM PHOSPHATE≤2}',
    additives: ['monocalcium-phosphate'],
  },
  {
    kind: 'two thresholds on different levels',
    text: 'HAM (PORK, CONTAINS 2% OR LESS OF: SODIUM PHOSPHATES), BUN, CONTAINS 1% OR LESS OF: POTASSIUM CHLORIDE',
    tree: 'HAM{PORK, SODIUM PHOSPHATES≤2}, BUN, POTASSIUM CHLORIDE≤1',
    additives: ['sodium-phosphates', 'potassium-chloride'],
  },
  {
    kind: 'a cure without its meat and an optional part behind it',
    text: 'CURED WITH WATER, SALT, SODIUM NITRITE. MAY ALSO CONTAIN SUGAR, SODIUM PHOSPHATE, POTASSIUM CHLORIDE',
    tree: '#CURED WITH{WATER, SALT, SODIUM NITRITE}, ?SUGAR, ?SODIUM PHOSPHATE, ?POTASSIUM CHLORIDE',
    additives: ['sodium-phosphates may-contain', 'potassium-chloride may-contain'],
  },
  {
    kind: 'a comma inside the name of a salt',
    text: 'STARCH, SODIUM ACID, PYROPHOSPHATE, SALT',
    tree: 'STARCH, SODIUM ACID, PYROPHOSPHATE, SALT',
    additives: ['sodium-acid-pyrophosphate'],
  },
  {
    kind: 'no separators at all',
    text: 'FILTERED WATER WHEY PROTEIN ISOLATE PHOSPHORIC ACID CITRIC ACID NATURAL FLAVORS',
    tree: 'FILTERED WATER WHEY PROTEIN ISOLATE PHOSPHORIC ACID CITRIC ACID NATURAL FLAVORS',
    additives: ['dried-whey-sweet not counted', 'phosphoric-acid'],
  },
  {
    kind: 'an allergen line glued to the last word, and a second list behind it',
    text: 'OATS, SALT.CONTAINS: WHEAT, SOY.GLAZE: SUGAR, POTASSIUM CITRATE',
    tree: 'OATS, SALT, @GLAZE{SUGAR, POTASSIUM CITRATE}',
    additives: ['potassium-citrate'],
  },
  {
    kind: 'a shared cation over brackets',
    text: 'FISH, SODIUM (MONO, HEXAMETA, AND/OR TRIPOLY) PHOSPHATE, SALT',
    tree: 'FISH, SODIUM PHOSPHATE{|MONO, |HEXAMETA, |TRIPOLY}, SALT',
    additives: ['monosodium-phosphate alternative', 'sodium-hexametaphosphate alternative', 'sodium-tripolyphosphate alternative'],
  },
  {
    kind: 'a variety pack',
    text: 'Lemon Ingredients: sugar, citric acid, tricalcium phosphate. Cherry Ingredients: sugar, malic acid',
    tree: '@Lemon{sugar, citric acid, tricalcium phosphate}, @Cherry{sugar, malic acid}',
    additives: ['tricalcium-phosphate'],
  },
  {
    kind: 'a solution in the name of the meat',
    text: 'CHICKEN BREAST CONTAINING UP TO 18% OF A SOLUTION OF WATER, SALT, SODIUM PHOSPHATES.',
    tree: 'CHICKEN BREAST, #up to 18% of a solution{WATER, SALT, SODIUM PHOSPHATES}',
    additives: ['sodium-phosphates'],
  },
  {
    kind: 'one or more of, with an or inside',
    text: 'CORN, OIL (ONE OR MORE OF: SOYBEAN, PALM OR CANOLA), LEAVENING (ONE OR MORE OF: CALCIUM PHOSPHATE, BAKING SODA)',
    tree: 'CORN, OIL{|SOYBEAN, #|PALM OR CANOLA{|PALM, |CANOLA}}, #LEAVENING{|CALCIUM PHOSPHATE, |BAKING SODA}',
    additives: ['calcium-phosphate alternative'],
  },
  {
    kind: 'a hyphen left over from a line break',
    text: 'SHRIMP, SALT, SODIUM TRIPOLY- PHOSPHATE (TO RETAIN MOIS- TURE)',
    tree: 'SHRIMP, SALT, SODIUM TRIPOLY- PHOSPHATE~TO RETAIN MOIS- TURE',
    additives: ['sodium-tripolyphosphate'],
  },
  {
    kind: 'a damaged dagger and a tag',
    text: 'COCOA\u00c3\u00a2\u00e2\u201a\u00ac\u00c2, MILK<sup>+</sup>, DIPOTASSIUM PHOSPHATE',
    tree: 'COCOA, MILK, DIPOTASSIUM PHOSPHATE',
    additives: ['dipotassium-phosphate', 'dipotassium-phosphate'],
  },
  {
    kind: 'a less-than sign and a bracket of angle signs',
    text: 'DRESSING {MUSTARD <VINEGAR, SALT>, WATER}, CONTAINS <2% OF PHOSPHORIC ACID',
    tree: 'DRESSING{MUSTARD{VINEGAR, SALT}, WATER}, PHOSPHORIC ACID≤2',
    additives: ['phosphoric-acid'],
  },
  {
    kind: 'a percentage that is part of a name, and one that is not',
    text: '2% REDUCED FAT MILK, MYCOPROTEIN (83%), TRUFFLE 0,5%, SALT 1.60%',
    tree: '2% REDUCED FAT MILK, MYCOPROTEIN=83, TRUFFLE=0.5, SALT=1.6',
    additives: [],
  },
  {
    kind: 'a note between commas and a note without a bracket',
    text: 'POTATOES, SODIUM ACID PYROPHOSPHATE ADDED TO MAINTAIN NATURAL COLOR, BHT, TO PRESERVE FRESHNESS',
    tree: 'POTATOES, SODIUM ACID PYROPHOSPHATE~ADDED TO MAINTAIN NATURAL COLOR, BHT~TO PRESERVE FRESHNESS',
    additives: ['sodium-acid-pyrophosphate'],
  },
  {
    kind: 'function words with colons in the European way',
    text: 'MILK, EMULSIFIER: SOY LECITHIN (INS 322), ACIDITY REGULATOR: E340(ii), SALT',
    tree: 'MILK, #EMULSIFIER{SOY LECITHIN{INS 322}}, #ACIDITY REGULATOR{E340{ii}}, SALT',
    additives: ['lecithin not counted', 'lecithin not counted', 'dipotassium-phosphate', 'dipotassium-phosphate'],
  },
  {
    kind: 'minerals behind a heading, real phosphates among vitamins',
    text: 'WATER, SUGAR. VITAMINS & MINERALS: CALCIUM PHOSPHATE, FERRIC PYROPHOSPHATE, POTASSIUM IODIDE, RIBOFLAVIN',
    tree: 'WATER, SUGAR, #VITAMINS & MINERALS{CALCIUM PHOSPHATE, FERRIC PYROPHOSPHATE, POTASSIUM IODIDE, RIBOFLAVIN}',
    additives: ['calcium-phosphate', 'ferric-pyrophosphate not counted', 'potassium-iodide not counted'],
  },
  {
    kind: 'a claim in the middle, not to hide what follows',
    text: 'TURKEY, WATER, NO NITRITES ADDED, SODIUM PHOSPHATE. NO MSG. POTASSIUM LACTATE',
    tree: 'TURKEY, WATER, SODIUM PHOSPHATE, POTASSIUM LACTATE',
    additives: ['sodium-phosphates', 'potassium-lactate'],
  },
  {
    kind: 'cut off in the middle of a list',
    text: 'CHEESE SAUCE (WATER, CHEESE [MILK, SALT], DISODIUM PHOSPHATE, POTASSIUM CHLOR',
    tree: 'CHEESE SAUCE{WATER, CHEESE{MILK, SALT}, DISODIUM PHOSPHATE, POTASSIUM CHLOR}',
    additives: ['disodium-phosphate'],
  },
];

describe('the hardest kinds of statement', () => {
  test('[STM-1] are twenty', () => {
    expect(new Set(kinds.map(({ kind }) => kind)).size).toBe(20);
  });
  test.each(kinds)('[STM-1] [ADD-1] $kind', ({ text, tree, additives }) => {
    const { value } = parseStatement(text);
    expect(outline(value)).toBe(tree);
    const findings = findAdditives(value).filter(finding => finding.class !== 'sodium');
    expect(
      findings.map(({ id, counts, certainty }) => `${id}${certainty === 'named' ? '' : ` ${certainty}`}${counts ? '' : ' not counted'}`),
    ).toEqual(additives);
  });
});
