import type { Nutrient } from '#core/quantity/nutrients.ts';
import {
  type AbsenceKindName,
  absenceKinds,
  type Measure,
  type MeasureOfKind,
  type NumberKindName,
  type NumberMeasure,
  numberKinds,
} from './measureKinds.ts';
import type { MeasureFacts } from './numberKind.ts';

export function isNumberMeasure(measure: Measure): measure is NumberMeasure {
  return Object.hasOwn(numberKinds, measure.kind);
}

type FactsOfKind = { readonly [Kind in NumberKindName]: { readonly facts: (measure: MeasureOfKind[Kind]) => MeasureFacts<NumberMeasure> } };
const numberFacts: FactsOfKind = numberKinds;

/** All that is asked of a measure that is a number. Made once a test, not once a food. */
export function factsOf<Kind extends NumberKindName>(measure: MeasureOfKind[Kind] & { readonly kind: Kind }): MeasureFacts<NumberMeasure> {
  return numberFacts[measure.kind].facts(measure);
}

/** The nutrients that a measure looks at, in the order of its totals: none for what looks for words. */
export function nutrientsOf(measure: Measure): readonly Nutrient[] {
  return isNumberMeasure(measure) ? factsOf(measure).nutrients : [];
}

type WordsOfKind = {
  readonly [Kind in AbsenceKindName]: Readonly<Record<'subject' | 'oneOfIt', (measure: MeasureOfKind[Kind]) => string>>;
};
const absenceFacts: WordsOfKind = absenceKinds;

/** What must not be named: "phosphate additives". */
export function absenceSubject<Kind extends AbsenceKindName>(measure: MeasureOfKind[Kind] & { readonly kind: Kind }): string {
  return absenceFacts[measure.kind].subject(measure);
}

/** One of what must not be named: "a phosphate additive". */
export function absenceWords<Kind extends AbsenceKindName>(measure: MeasureOfKind[Kind] & { readonly kind: Kind }): string {
  return absenceFacts[measure.kind].oneOfIt(measure);
}
