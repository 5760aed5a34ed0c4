import { conditions, medicines, supplements, symptoms } from '#core/client/assessment/vocabularies.ts';
import { missingParts } from '#core/client/formulas/amputation.ts';
import { Ticks } from '../../ui/form/Ticks.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import type { TypedAssessment } from './typedAssessment.ts';
import { choicesOf } from './vocabulary.ts';

/** What is on record of each list of the assessment. */
export function TickedLists({ ticked: { field } }: { readonly ticked: Typed<TypedAssessment['ticked']> }) {
  return (
    <>
      <Ticks label="Conditions" choices={choicesOf(conditions)} {...field('conditions')} />
      <Ticks label="Missing parts of the body, one side" choices={choicesOf(missingParts)} {...field('missingParts')} />
      <Ticks label="Medicines, by class" choices={choicesOf(medicines)} {...field('medicines')} />
      <Ticks label="Supplements" choices={choicesOf(supplements)} {...field('supplements')} />
      <Ticks label="Symptoms" choices={choicesOf(symptoms)} {...field('symptoms')} />
    </>
  );
}
