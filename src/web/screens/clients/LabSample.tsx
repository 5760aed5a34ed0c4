import { drawnTimes } from '#core/client/assessment/vocabularies.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import type { TypedLab } from './typedResults.ts';
import { choicesOf } from './vocabulary.ts';

const drawnChoices = orNone('not known', choicesOf(drawnTimes));

/** What seldom comes with a result: its hour, before or after dialysis, and the laboratory's own limits. */
export function LabSample({ lab: { field, values } }: { readonly lab: Typed<TypedLab> }) {
  const { takenAt, drawn, lowerNormal, upperNormal } = values;
  return (
    <details className={text.small}>
      <summary>Hour, dialysis, laboratory’s limits{takenAt + drawn + lowerNormal + upperNormal === '' ? '' : ' (given)'}</summary>
      <div className={layout.row}>
        <Field label="Taken at" type="time" {...field('takenAt')} />
        <Choice label="Drawn" choices={drawnChoices} {...field('drawn')} />
        <Field label="Lower limit" type="number" {...field('lowerNormal')} />
        <Field label="Upper limit" type="number" {...field('upperNormal')} />
      </div>
    </details>
  );
}
