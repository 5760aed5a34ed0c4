import { appetites, lossCauses } from '#core/client/assessment/vocabularies.ts';
import layout from '../../ui/layout.module.css';
import { Choice, Field, type Part } from './DraftFields.tsx';
import { type Choices, choicesOf } from './vocabulary.ts';

const heightChoices: Choices<string> = [
  ['cm', 'cm'],
  ['ft', 'feet and inches'],
  ['in', 'inches'],
  ['m', 'm'],
];

/** Height, urine, appetite, losses and what is eaten; weights stand below them, in rows. */
export function BodyFields(part: Part) {
  const isInFeet = part.draft.fields.heightUnit === 'ft';
  return (
    <div className={layout.formgrid}>
      <Choice {...part} name="heightUnit" label="Height in" choices={heightChoices} />
      <Field {...part} name="height" label={isInFeet ? 'Feet' : 'Height'} type="number" />
      {isInFeet && <Field {...part} name="inches" label="Inches" type="number" />}
      <Field {...part} name="urine" label="Urine, mL a day" type="number" />
      <Field {...part} name="urineOn" label="Urine measured on" type="date" />
      <Choice {...part} name="appetite" label="Appetite" none="not asked" choices={choicesOf(appetites)} />
      <Field {...part} name="loss3" label="Weight loss in 3 months, %" type="number" />
      <Field {...part} name="loss6" label="Weight loss in 6 months, %" type="number" />
      <Choice {...part} name="lossCause" label="The loss was" none="not asked" choices={choicesOf(lossCauses)} />
      <Field {...part} name="muscle3" label="Muscle loss in 3 months, %" type="number" />
      <Field {...part} name="muscle6" label="Muscle loss in 6 months, %" type="number" />
      <Field {...part} name="littleForDays" label="Days with next to nothing eaten" type="number" />
      <Field {...part} name="energyKcal" label="Energy eaten, kcal a day" type="number" />
      <Field {...part} name="proteinG" label="Protein eaten, g a day" type="number" />
    </div>
  );
}

export function FoodFields(part: Part) {
  return (
    <fieldset>
      <legend>Food, goals and steps taken</legend>
      <div className={layout.formgrid}>
        <Field {...part} name="allergies" label="Allergies (commas between)" />
        <Field {...part} name="avoidedFoods" label="Foods avoided (commas between)" />
        <Field {...part} name="foodAccess" label="Access to food" />
        <Field {...part} name="goals" label="Goals (commas between)" />
        <Field {...part} name="raasChangedOn" label="RAAS inhibitor begun or changed on" type="date" />
        <Field {...part} name="causesCheckedOn" label="High potassium: other causes gone through on" type="date" />
        <Field {...part} name="additivesCutOn" label="High potassium: additives and salt substitutes cut on" type="date" />
        <Field {...part} name="lastScreenedOn" label="Last screened on" type="date" />
        <Field {...part} name="lastFullAssessmentOn" label="Last full assessment on" type="date" />
      </div>
    </fieldset>
  );
}
