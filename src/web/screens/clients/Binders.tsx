import { binders, mealTimes, potassiumBinders } from '#core/client/assessment/vocabularies.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { TypedRows } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { blankBinder, blankPotassiumBinder, type TypedBinder, type TypedPotassiumBinder } from './typedTaken.ts';
import { choicesOf } from './vocabulary.ts';

/** Phosphate binders with strength and number: the calcium of a day comes from them. */
export function Binders({ rows }: { readonly rows: TypedRows<TypedBinder> }) {
  const nameOf = ({ name }: TypedBinder, at: number) => `Phosphate binder ${at + 1}${name === '' ? '' : `: ${binders.words(name)}`}`;
  return (
    <RowsEditor
      label="Phosphate binders"
      rows={rows}
      blank={() => blankBinder}
      addLabel="Add a phosphate binder"
      nameOf={(row, at) => nameOf(row, at).toLowerCase()}
      legendOf={nameOf}
    >
      {({ field, values: { name } }) => (
        <div className={layout.formgrid}>
          <Choice label="Binder" choices={orNone('choose', choicesOf(binders))} {...field('name')} />
          {name === 'other' && <Field label="Which one" {...field('words')} />}
          <Field label="In one, mg of the binder" type="number" hint={hintOf(name)} {...field('unitMg')} />
          <Field label="Number a day" type="number" {...field('unitsPerDay')} />
          {mealTimes.keys.map(meal => (
            <Field key={meal} label={`Number with ${mealTimes.words(meal)}`} type="number" {...field(meal)} />
          ))}
        </div>
      )}
    </RowsEditor>
  );
}

/** A label may print another figure than that of the binder. */
function hintOf(name: TypedBinder['name']): string {
  if (name === 'calcium-carbonate') return 'Not the calcium in it: 500 mg of calcium are in 1250 mg.';
  if (name === 'lanthanum') return 'As the label has it: mg of lanthanum.';
  return 'A tablet, capsule or packet.';
}

export function PotassiumBinders({ rows }: { readonly rows: TypedRows<TypedPotassiumBinder> }) {
  return (
    <RowsEditor
      label="Potassium binders"
      rows={rows}
      blank={() => blankPotassiumBinder}
      addLabel="Add a potassium binder"
      nameOf={({ name }, at) => `potassium binder ${at + 1}${name === '' ? '' : `: ${potassiumBinders.words(name)}`}`}
    >
      {({ field }) => (
        <>
          <Choice label="Potassium binder" choices={orNone('choose', choicesOf(potassiumBinders))} {...field('name')} />
          <Field label="Grams on such a day" type="number" {...field('gPerDay')} />
          <Field label="Days a week" type="number" {...field('daysPerWeek')} />
        </>
      )}
    </RowsEditor>
  );
}
