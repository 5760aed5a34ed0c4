import { addedFoods } from '#core/client/assessment/vocabularies.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { type Choices, orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { Bound, TypedRows } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import text from '../../ui/text.module.css';
import { blankFood, type TypedFood } from './typedTaken.ts';
import { choicesOf } from './vocabulary.ts';

const holdsChoices: Choices<string> = [
  ['yes', 'yes, they are in it'],
  ['no', 'no, they come on top'],
];

/** Supplements, feeds and meals on dialysis, which count as eaten; nothing is counted twice. */
export function AddedFoods(given: { readonly rows: TypedRows<TypedFood>; readonly holdsAdded: Bound<string> }) {
  const { rows, holdsAdded } = given;
  const nameOf = ({ name, words }: TypedFood, at: number) =>
    `Beside meals ${at + 1}${name === '' ? '' : `: ${words.trim() || addedFoods.words(name)}`}`;
  return (
    <RowsEditor
      label="Supplements, feeds and meals on dialysis"
      rows={rows}
      blank={() => blankFood}
      addLabel="Add a supplement, feed or meal on dialysis"
      nameOf={(row, at) => nameOf(row, at).toLowerCase()}
      legendOf={nameOf}
      below={
        rows.each.length > 0 && (
          <div className={layout.formgrid}>
            <Choice label="Are they in the energy and protein eaten?" choices={orNone<string>('not asked', holdsChoices)} {...holdsAdded} />
          </div>
        )
      }
    >
      {({ field }) => (
        <>
          <p className={text.soft}>All of a day on which it is taken. What the label does not tell stays empty.</p>
          <div className={layout.formgrid}>
            <Choice label="What it is" choices={orNone('choose', choicesOf(addedFoods))} {...field('name')} />
            <Field label="In words" aside="may be left out" maxLength={200} {...field('words')} />
            <Field label="Days a week" type="number" {...field('daysPerWeek')} />
            <Field label="Energy, kcal" type="number" {...field('energyKcal')} />
            <Field label="Protein, g" type="number" {...field('proteinG')} />
            <Field label="Sodium, mg" type="number" {...field('sodiumMg')} />
            <Field label="Potassium, mg" type="number" {...field('potassiumMg')} />
            <Field label="Phosphorus, mg" type="number" {...field('phosphorusMg')} />
            <Field label="Calcium, mg" type="number" {...field('calciumMg')} />
            <Field label="Fluid, mL" type="number" {...field('fluidMl')} />
          </div>
        </>
      )}
    </RowsEditor>
  );
}
