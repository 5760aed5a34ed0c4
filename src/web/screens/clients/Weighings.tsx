import { weightUnits } from '#core/client/formulas/bodyUnits.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { TypedRows } from '../../ui/form/typed.ts';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { RowAnswer } from './RowAnswer.tsx';
import { blankWeighing, type TypedWeighing } from './typedResults.ts';
import { weightKindChoices } from './vocabulary.ts';

/** Weights with their kind, and what is asked about each: only some kinds set a target. */
export function Weighings(given: {
  readonly weighings: TypedRows<TypedWeighing>;
  readonly today: string;
  readonly questions: ReadonlyMap<number, string>;
}) {
  const { weighings, today, questions } = given;
  return (
    <RowsEditor
      label="Weights"
      rows={weighings}
      blank={() => blankWeighing(today)}
      addLabel="Add a weight"
      nameOf={({ value, unit, on }) => `the weight ${value} ${unit} of ${on}`}
    >
      {({ field, set, values: { value, unit } }, at) => (
        <>
          <Field label="Weight" type="number" value={value} onChange={next => set({ value: next, unitConfirmed: false })} />
          <Choice
            label="Unit"
            choices={plainChoices(weightUnits)}
            value={unit}
            onChange={next => set({ unit: next, unitConfirmed: false })}
          />
          <Choice label="Kind" choices={weightKindChoices} {...field('kind')} />
          <Field label="On" type="date" {...field('on')} />
          <RowAnswer question={questions.get(at)} name={`${value} ${unit}`} {...field('unitConfirmed')} />
        </>
      )}
    </RowsEditor>
  );
}
