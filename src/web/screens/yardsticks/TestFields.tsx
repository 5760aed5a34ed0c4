import { additiveClasses } from '#core/additive/additive.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import styles from './TestFields.module.css';
import {
  boundChoices,
  isAbsence,
  kindChoices,
  nutrientChoices,
  otherNutrients,
  ownSource,
  type TypedTest,
  testBases,
  testOfKind,
} from './typedYardstick.ts';

/** One test of a yardstick: what is measured, on which basis, against which bound, and where the bound comes from. */
export function TestFields({ test, text }: { readonly test: Typed<TypedTest>; readonly text: string }) {
  const { values, set, field } = test;
  const measure = test.part('measure');
  const { kind, others } = measure.values;
  const isNumber = !isAbsence(kind);
  return (
    <fieldset className={`${layout.stack} ${styles.test}`}>
      <legend>{text}</legend>
      <div className={layout.formgrid}>
        <Choice label="Measure" choices={kindChoices} value={kind} onChange={next => set(testOfKind(values, next))} />
        {isNumber && <Choice label="Nutrient" choices={nutrientChoices} {...measure.field('nutrient')} />}
        {isNumber &&
          otherNutrients(measure.values).map((title, at) => (
            <Choice
              key={title}
              label={title}
              choices={nutrientChoices}
              value={others[at]!}
              onChange={next => measure.set({ others: others.with(at, next) })}
            />
          ))}
        {kind === 'additive' && <Choice label="Additives" choices={plainChoices(additiveClasses)} {...measure.field('additives')} />}
        {kind === 'ingredient' && <Field label="Ingredient" isRequired {...measure.field('ingredient')} />}
        <Choice label="Basis" choices={testBases(kind)} value={values.basis} onChange={basis => set({ basis })} />
        {isNumber && (
          <>
            <Choice label="Bound" choices={boundChoices} value={values.bound} onChange={bound => set({ bound, source: ownSource })} />
            <Field label="Figure" type="number" isRequired value={values.figure} onChange={figure => set({ figure, source: ownSource })} />
            <Field label="Nearly: over by no more than" type="number" min="0" {...field('slack')} />
          </>
        )}
        <Field
          label="Where the bound comes from"
          isRequired
          value={values.source.text}
          onChange={words => set({ source: { kind: 'clinic', text: words } })}
        />
      </div>
      <div className={layout.row}>
        <Tick label="judged without being switched on" {...field('isJudgedAtOnce')} />
        {isNumber && <Tick label="estimates may be used, at their safe end" {...field('useEstimates')} />}
      </div>
    </fieldset>
  );
}
