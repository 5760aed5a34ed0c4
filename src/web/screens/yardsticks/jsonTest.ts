/** A test of a yardstick as docs/formats.md has it in JSON. */
export interface JsonTest {
  readonly id: string;
  readonly measure: JsonMeasure;
  readonly basis: string;
  readonly atMost?: number;
  readonly atLeast?: number;
  readonly below?: number;
  readonly absent?: true;
  readonly slack?: number;
  readonly useEstimates?: boolean;
  readonly off?: boolean;
  readonly claimRule?: string;
  readonly source: { readonly kind: string; readonly text: string };
}

export type JsonMeasure =
  | { readonly kind: 'nutrient' | 'daily-value-percent'; readonly nutrient: string }
  | { readonly kind: 'difference'; readonly nutrient: string; readonly minus: string }
  | { readonly kind: 'ratio'; readonly nutrient: string; readonly per: string }
  | { readonly kind: 'additive'; readonly class: string }
  | { readonly kind: 'ingredient'; readonly kin: string };

export const kindNames: Readonly<Record<JsonMeasure['kind'], string>> = {
  nutrient: 'amount of a nutrient',
  difference: 'one nutrient against another',
  ratio: 'one nutrient for each unit of another',
  'daily-value-percent': '% of the Daily Value',
  additive: 'no additive named',
  ingredient: 'no ingredient named',
};

export const nutrientChoices: readonly (readonly [string, string])[] = [
  ['sodiumMg', 'sodium (mg)'],
  ['potassiumMg', 'potassium (mg)'],
  ['phosphorusMg', 'phosphorus (mg)'],
  ['proteinG', 'protein (g)'],
  ['energyKcal', 'energy (kcal)'],
  ['calciumMg', 'calcium (mg)'],
  ['fatG', 'fat (g)'],
  ['saturatedFatG', 'saturated fat (g)'],
  ['carbohydrateG', 'carbohydrate (g)'],
  ['totalSugarsG', 'sugars (g)'],
  ['addedSugarsG', 'added sugars (g)'],
  ['fiberG', 'fiber (g)'],
  ['cholesterolMg', 'cholesterol (mg)'],
];

const baseNames = {
  'as-eaten': 'the portion as eaten',
  'on-plate': 'the whole plate',
  'per-serving': 'a serving',
  'per-100-g': '100 g',
  'per-100-ml': '100 mL',
  'per-reference-amount': 'the reference amount',
} as const;

/** What is named on a label is looked for in the portion or on the plate; a number has every basis. */
export function testBases(kind: JsonMeasure['kind']): readonly (readonly [string, string])[] {
  const all = Object.entries(baseNames);
  return kind === 'additive' || kind === 'ingredient' ? all.slice(0, 2) : all;
}

/** The test with a measure of another kind; what the new kind has no place for goes. */
export function measureOfKind(test: JsonTest, kind: JsonMeasure['kind']): JsonTest {
  const nutrient = 'nutrient' in test.measure ? test.measure.nutrient : 'sodiumMg';
  const base = { id: test.id, source: test.source, ...(test.off === undefined ? {} : { off: test.off }) };
  const basis = testBases(kind).some(([one]) => one === test.basis) ? test.basis : 'as-eaten';
  if (kind === 'additive') return { ...base, basis, measure: { kind, class: 'phosphate' }, absent: true };
  if (kind === 'ingredient') return { ...base, basis, measure: { kind, kin: '' }, absent: true };
  const { atMost, atLeast, below } = test;
  const bound = atLeast !== undefined ? { atLeast } : below !== undefined ? { below } : { atMost: atMost ?? 0 };
  const number = { ...base, basis, ...bound, slack: test.slack ?? 0 };
  if (kind === 'difference') return { ...number, measure: { kind, nutrient, minus: 'energyKcal' } };
  if (kind === 'ratio') return { ...number, measure: { kind, nutrient, per: 'proteinG' } };
  return { ...number, measure: { kind, nutrient } };
}

export function newTest(): JsonTest {
  return {
    id: crypto.randomUUID(),
    measure: { kind: 'nutrient', nutrient: 'potassiumMg' },
    basis: 'as-eaten',
    atMost: 200,
    slack: 0,
    source: { kind: 'clinic', text: 'set in this workbench' },
  };
}
