import { dialysateLabels } from '#core/client/formulas/dialysateGlucose.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { TypedRows } from '../../ui/form/typed.ts';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { blankBag, type TypedBag } from './typedResults.ts';

/** Dialysate of a day: the glucose in it counts as energy. */
export function Bags({ bags }: { readonly bags: TypedRows<TypedBag> }) {
  return (
    <RowsEditor
      label="Dialysate of a day"
      rows={bags}
      blank={blankBag}
      addLabel="Add a bag of the day"
      nameOf={({ liters, percent }, at) => `bag ${at + 1}, ${liters} L of ${percent} %`}
    >
      {({ field }) => (
        <>
          <Field label="Bag, liters" type="number" {...field('liters')} />
          <Field label="Glucose, %" type="number" {...field('percent')} />
          <Choice label="Labeled as" choices={plainChoices(dialysateLabels)} {...field('labeledAs')} />
        </>
      )}
    </RowsEditor>
  );
}
