import { Choice } from '../../ui/form/Choice.tsx';
import { plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import { portionUnits, type TypedPortion } from './typedPortion.ts';

/** Two fields, side by side, for one portion. */
export function PortionFields({ name, portion }: { readonly name: string; readonly portion: Typed<TypedPortion> }) {
  return (
    <>
      <Field label={name} type="number" isRequired min="0.01" {...portion.field('amount')} />
      <Choice label="Counted in" choices={plainChoices(portionUnits)} {...portion.field('unit')} />
    </>
  );
}
