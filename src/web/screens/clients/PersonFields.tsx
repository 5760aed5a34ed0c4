import { dialysisPlaces, peritonealMethods } from '#core/client/assessment/vocabularies.ts';
import { sexes } from '#core/client/formulas/egfr.ts';
import { gfrCategories } from '#core/client/formulas/gfrCategory.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone, plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Bags } from './Bags.tsx';
import { Sessions } from './Sessions.tsx';
import type { TypedAssessment } from './typedAssessment.ts';
import { choicesOf, settingChoices } from './vocabulary.ts';

/** Who is assessed and how treated, with what each setting has of its own. */
export function PersonFields({ typed, today }: { readonly typed: Typed<TypedAssessment>; readonly today: string }) {
  const [{ field, values }, flags] = [typed.part('fields'), typed.part('flags')];
  const { setting } = values;
  const isOnDialysis = setting === 'hemodialysis' || setting === 'peritoneal-dialysis';
  const isPeritoneal = setting === 'peritoneal-dialysis';
  return (
    <fieldset className={layout.stack}>
      <legend>Who and how treated</legend>
      <div className={layout.formgrid}>
        <Field label="Day of the assessment" type="date" {...field('on')} />
        <Choice label="Sex (for formulas)" choices={orNone('choose', plainChoices<string>(sexes))} {...field('sex')} />
        <Field label="Born on" type="date" {...field('bornOn')} />
        <Field label="or age in years" type="number" {...field('years')} />
        <Choice label="Setting" choices={orNone<string>('choose', settingChoices)} {...field('setting')} />
        {setting === 'hemodialysis' && (
          <>
            <Choice<string> label="Place" choices={choicesOf(dialysisPlaces)} {...field('place')} />
            <Field label="Sessions a week" type="number" {...field('sessionsPerWeek')} />
            <Field label="Hours a session" type="number" {...field('sessionHours')} />
            <Field label="Agreed ultrafiltration limit, mL/kg/h" type="number" {...field('ultrafiltrationLimit')} />
          </>
        )}
        {isPeritoneal && (
          <>
            <Choice<string> label="Method" choices={choicesOf(peritonealMethods)} {...field('method')} />
            <Field label="Glucose absorbed, from 0 to 1" type="number" {...field('absorbedShare')} />
          </>
        )}
        {isOnDialysis && <Field label="Began on" type="date" {...field('startedOn')} />}
        {setting === 'transplant' && <Field label="Transplanted on" type="date" {...field('transplantedOn')} />}
        {(setting === 'ckd-not-on-dialysis' || setting === 'transplant') && (
          <>
            <Choice label="Stage set by the team" choices={orNone('not set', plainChoices<string>(gfrCategories))} {...field('stage')} />
            <Field label="Stage set on" type="date" {...field('stageOn')} />
          </>
        )}
      </div>
      <div className={layout.row}>
        <Tick label="diabetes" {...flags.field('diabetes')} />
        {setting === 'ckd-not-on-dialysis' && <Tick label="conservative care" {...flags.field('conservative')} />}
        <Tick label="acute kidney injury" {...flags.field('acuteKidneyInjury')} />
        <Tick label="pregnant" {...flags.field('pregnant')} />
        <Tick label="breastfeeding" {...flags.field('breastfeeding')} />
        {isPeritoneal && <Tick label="icodextrin" {...flags.field('icodextrin')} />}
      </div>
      {setting === 'hemodialysis' && <Sessions rows={typed.rows('sessions')} today={today} />}
      {isPeritoneal && <Bags bags={typed.rows('bags')} />}
    </fieldset>
  );
}
