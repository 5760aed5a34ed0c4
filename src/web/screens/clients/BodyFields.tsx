import { appetites, lossCauses } from '#core/client/assessment/vocabularies.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { type Choices, orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import type { TypedAssessment } from './typedAssessment.ts';
import { choicesOf } from './vocabulary.ts';

type Fields = Typed<TypedAssessment['fields']>;

const heightChoices: Choices<string> = [
  ['cm', 'cm'],
  ['ft', 'feet and inches'],
  ['in', 'inches'],
  ['m', 'm'],
];

/** Height, urine, appetite, losses and what is eaten; weights stand below them, in rows. */
export function BodyFields({ fields: { field, values } }: { readonly fields: Fields }) {
  const isInFeet = values.heightUnit === 'ft';
  return (
    <div className={layout.formgrid}>
      <Choice label="Height in" choices={heightChoices} {...field('heightUnit')} />
      <Field label={isInFeet ? 'Feet' : 'Height'} type="number" {...field('height')} />
      {isInFeet && <Field label="Inches" type="number" {...field('inches')} />}
      <Field label="Urine, mL a day" type="number" {...field('urine')} />
      <Field label="Urine measured on" type="date" {...field('urineOn')} />
      <Choice label="Appetite" choices={orNone<string>('not asked', choicesOf(appetites))} {...field('appetite')} />
      <Field label="Weight loss in 3 months, %" type="number" {...field('loss3')} />
      <Field label="Weight loss in 6 months, %" type="number" {...field('loss6')} />
      <Choice label="The loss was" choices={orNone<string>('not asked', choicesOf(lossCauses))} {...field('lossCause')} />
      <Field label="Muscle loss in 3 months, %" type="number" {...field('muscle3')} />
      <Field label="Muscle loss in 6 months, %" type="number" {...field('muscle6')} />
      <Field label="Days with next to nothing eaten" type="number" {...field('littleForDays')} />
      <Field label="Energy eaten, kcal a day" type="number" {...field('energyKcal')} />
      <Field label="Protein eaten, g a day" type="number" {...field('proteinG')} />
    </div>
  );
}

export function FoodFields({ fields: { field } }: { readonly fields: Fields }) {
  return (
    <fieldset>
      <legend>Food, goals and steps taken</legend>
      <div className={layout.formgrid}>
        <Field label="Allergies (commas between)" {...field('allergies')} />
        <Field label="Foods avoided (commas between)" {...field('avoidedFoods')} />
        <Field label="Access to food" {...field('foodAccess')} />
        <Field label="Goals (commas between)" {...field('goals')} />
        <Field label="RAAS inhibitor begun or changed on" type="date" {...field('raasChangedOn')} />
        <Field label="High potassium: other causes gone through on" type="date" {...field('causesCheckedOn')} />
        <Field label="High potassium: additives and salt substitutes cut on" type="date" {...field('additivesCutOn')} />
        <Field label="Last screened on" type="date" {...field('lastScreenedOn')} />
        <Field label="Last full assessment on" type="date" {...field('lastFullAssessmentOn')} />
      </div>
    </fieldset>
  );
}
