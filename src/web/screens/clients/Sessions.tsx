import { Field } from '../../ui/form/Field.tsx';
import type { TypedRows } from '../../ui/form/typed.ts';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { blankSession, type TypedSession } from './typedTaken.ts';

/** Gain and fluid, treatment by treatment. Weights before and after stand among the weights. */
export function Sessions({ rows, today }: { readonly rows: TypedRows<TypedSession>; readonly today: string }) {
  return (
    <RowsEditor
      label="Treatments on record"
      rows={rows}
      blank={() => blankSession(today)}
      addLabel="Add a treatment"
      nameOf={({ on }) => `the treatment of ${on}`}
    >
      {({ field }) => (
        <>
          <Field label="Treatment on" type="date" {...field('on')} />
          <Field label="Gain before it, kg" type="number" {...field('gainKg')} />
          <Field label="Fluid taken off, L" type="number" {...field('removedL')} />
          <Field label="Length, hours" type="number" {...field('hours')} />
        </>
      )}
    </RowsEditor>
  );
}
