import type { AdditiveClass } from '#core/additive/additive.ts';
import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { factsOf, isNumberMeasure } from '#core/yardstick/measures/measureFacts.ts';
import { absenceKinds, type Measure, type MeasureKindName, measureKinds } from '#core/yardstick/measures/measureKinds.ts';
import type { YardstickJson } from '#core/yardstick/yardstickFromJson.ts';

/** A test of a yardstick as docs/formats.md has it in JSON. */
type JsonTest = YardstickJson['tests'][number];

export const boundChoices = [
  ['atMost', 'at most'],
  ['atLeast', 'at least'],
  ['below', 'under'],
] as const;
type BoundKind = (typeof boundChoices)[number][0];

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
  return (isAbsence(kind) ? shownBases.slice(0, 2) : shownBases).map(key => [key, baseNames[key]] as const);
}

export function isAbsence(kind: MeasureKindName): kind is keyof typeof absenceKinds {
  return kind in absenceKinds;
}

/** A bound that was changed here is no longer what its old source says. */
export const ownSource: JsonTest['source'] = { kind: 'clinic', text: 'set in this workbench' };

/** What is measured, as the form holds it: a place for what any kind asks, since one may be tried after the other. */
export interface TypedMeasure {
  readonly kind: MeasureKindName;
  readonly nutrient: Nutrient;
  /** The nutrients that the kind takes beside its first. */
  readonly others: readonly Nutrient[];
  readonly additives: AdditiveClass;
  readonly ingredient: string;
}

/** A test as the form holds it. */
export interface TypedTest {
  readonly id: string;
  readonly measure: TypedMeasure;
  readonly basis: JsonTest['basis'];
  readonly bound: BoundKind;
  readonly figure: string;
  readonly slack: string;
  readonly isJudgedAtOnce: boolean;
  readonly useEstimates: boolean;
  readonly isClaim: boolean;
  readonly source: JsonTest['source'];
}

export interface TypedYardstick {
  readonly title: string;
  readonly purpose: string;
  readonly tests: readonly TypedTest[];
}

/** `isCopy` for a yardstick that is built in: it is copied under a name of its own. */
export function typedYardstick({ title, purpose = '', tests }: YardstickJson, isCopy: boolean): TypedYardstick {
  return { title: isCopy ? `${title}, my own` : title, purpose, tests: tests.map(typedTest) };
}

/** The yardstick with what is typed; undefined while a figure or a word of it is missing. */
export function yardstickOf(start: YardstickJson, { title, purpose, tests }: TypedYardstick): YardstickJson | undefined {
  return tests.every(isWhole) ? { ...start, title, purpose, tests: tests.map(testOf) } : undefined;
}

export function newTest(): TypedTest {
  return typedTest({
    id: crypto.randomUUID(),
    measure: { kind: 'nutrient', nutrient: 'potassiumMg' },
    basis: 'as-eaten',
    atMost: 200,
    source: ownSource,
  });
}

/** The test with a measure of another kind; what the new kind has no place for goes. */
export function testOfKind(test: TypedTest, kind: MeasureKindName): TypedTest {
  const measure = typedMeasure(measureKinds[kind].usual(test.measure.nutrient));
  const basis = testBases(kind).some(([one]) => one === test.basis) ? test.basis : 'as-eaten';
  return { ...test, measure: { ...measure, nutrient: test.measure.nutrient }, basis, useEstimates: false, isClaim: false };
}

/** The nutrients that a measure takes beside its first, each with the words that ask for it. */
export function otherNutrients(typed: TypedMeasure): readonly string[] {
  const measure = measureOf(typed);
  return isNumberMeasure(measure) ? factsOf(measure).otherFields.map(({ title }) => title) : [];
}

function typedTest(test: JsonTest): TypedTest {
  const { id, measure, basis, slack = 0, off = false, useEstimates = false, claimRule, source } = test;
  const bound = boundChoices.map(([one]) => one).find(one => test[one] !== undefined) ?? 'atMost';
  return {
    id,
    measure: typedMeasure(measure),
    basis,
    bound,
    figure: String(test[bound] ?? 0),
    slack: String(slack),
    isJudgedAtOnce: !off,
    useEstimates,
    isClaim: claimRule !== undefined,
    source,
  };
}

function typedMeasure(measure: Measure): TypedMeasure {
  return {
    kind: measure.kind,
    nutrient: 'nutrient' in measure ? measure.nutrient : 'sodiumMg',
    others: isNumberMeasure(measure) ? factsOf(measure).otherFields.map(({ nutrient }) => nutrient) : [],
    additives: 'class' in measure ? measure.class : 'phosphate',
    ingredient: 'kin' in measure ? measure.kin : '',
  };
}

function isWhole({ measure: { kind, ingredient }, figure, slack }: TypedTest): boolean {
  if (isAbsence(kind)) return kind !== 'ingredient' || ingredient.trim() !== '';
  // Without a slack nothing over the bound is nearly.
  return figure.trim() !== '' && [figure, slack].every(typed => Number.isFinite(Number(typed)));
}

function testOf({ id, measure, basis, bound, figure, slack, isJudgedAtOnce, useEstimates, isClaim, source }: TypedTest): JsonTest {
  const own = { id, measure: measureOf(measure), basis, source, ...(isJudgedAtOnce ? {} : { off: true }) };
  if (isAbsence(measure.kind)) return { ...own, absent: true };
  return {
    ...own,
    [bound]: Number(figure),
    slack: Number(slack),
    ...(useEstimates ? { useEstimates } : {}),
    ...(isClaim && basis === 'per-reference-amount' ? { claimRule: 'us-sodium-claim' } : {}),
  };
}

function measureOf({ kind, nutrient, others, additives, ingredient }: TypedMeasure): Measure {
  if (kind === 'additive') return { kind, class: additives };
  if (kind === 'ingredient') return { kind, kin: ingredient };
  return others.reduce<Measure>(
    (measure, other, at) => (isNumberMeasure(measure) ? (factsOf(measure).otherFields[at]?.with(other) ?? measure) : measure),
    measureKinds[kind].usual(nutrient),
  );
}
