import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { isNumberMeasure } from '#core/yardstick/measures/measureFacts.ts';
import { absenceKinds, type MeasureKindName, measureKinds } from '#core/yardstick/measures/measureKinds.ts';
import type { YardstickJson } from '#core/yardstick/yardstickFromJson.ts';

/** A test of a yardstick as docs/formats.md has it in JSON. */
export type JsonTest = YardstickJson['tests'][number];

const kinds = Object.keys(measureKinds) as readonly MeasureKindName[];

export const kindChoices: readonly (readonly [MeasureKindName, string])[] = kinds.map(kind => [kind, measureKinds[kind].title] as const);

/** Those that yardsticks mostly look at come first. */
const first: readonly Nutrient[] = ['sodiumMg', 'potassiumMg', 'phosphorusMg', 'proteinG', 'energyKcal', 'calciumMg'];

export const nutrientChoices: readonly (readonly [Nutrient, string])[] = [...new Set([...first, ...nutrientKeys])].map(
  key => [key, `${nutrients[key].name} (${nutrients[key].unit})`] as const,
);

const baseNames = {
  'as-eaten': 'the portion as eaten',
  'on-plate': 'the whole plate',
  'per-serving': 'a serving',
  'per-100-g': '100 g',
  'per-100-ml': '100 mL',
  'per-reference-amount': 'the reference amount',
} as const;
type ShownBasis = keyof typeof baseNames;
const shownBases = Object.keys(baseNames) as readonly ShownBasis[];

/** What is named on a label is looked for in the portion or on the plate; a number has every basis. */
export function testBases(kind: MeasureKindName): readonly (readonly [ShownBasis, string])[] {
  return (kind in absenceKinds ? shownBases.slice(0, 2) : shownBases).map(key => [key, baseNames[key]] as const);
}

/** The test with a measure of another kind; what the new kind has no place for goes. */
export function measureOfKind(test: JsonTest, kind: MeasureKindName): JsonTest {
  const measure = measureKinds[kind].usual('nutrient' in test.measure ? test.measure.nutrient : 'sodiumMg');
  const base = { id: test.id, measure, source: test.source, ...(test.off === undefined ? {} : { off: test.off }) };
  const basis = testBases(kind).some(([one]) => one === test.basis) ? test.basis : 'as-eaten';
  if (!isNumberMeasure(measure)) return { ...base, basis, absent: true };
  const { atMost, atLeast, below } = test;
  const bound = atLeast !== undefined ? { atLeast } : below !== undefined ? { below } : { atMost: atMost ?? 0 };
  return { ...base, basis, ...bound, slack: test.slack ?? 0 };
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
