import { dialysisPlaces, peritonealMethods } from '#core/client/assessment/vocabularies.ts';
import { sexes } from '#core/client/formulas/egfr.ts';
import { gfrCategories } from '#core/client/formulas/gfrCategory.ts';
import layout from '../../ui/layout.module.css';
import { Bags } from './BagRows.tsx';
import { Choice, Field, type Part, Tick } from './DraftFields.tsx';
import { choicesOf, plainChoices, settingChoices } from './vocabulary.ts';

/** Who is assessed and how treated, with what each setting has of its own. */
export function PersonFields(part: Part) {
  const { setting } = part.draft.fields;
  const isOnDialysis = setting === 'hemodialysis' || setting === 'peritoneal-dialysis';
  const isPeritoneal = setting === 'peritoneal-dialysis';
  return (
    <fieldset className={layout.stack}>
      <legend>Who and how treated</legend>
      <div className={layout.formgrid}>
        <Field {...part} name="on" label="Day of the assessment" type="date" />
        <Choice {...part} name="sex" label="Sex (for formulas)" none="choose" choices={plainChoices(sexes)} />
        <Field {...part} name="bornOn" label="Born on" type="date" />
        <Field {...part} name="years" label="or age in years" type="number" />
        <Choice {...part} name="setting" label="Setting" none="choose" choices={settingChoices} />
        {setting === 'hemodialysis' && (
          <>
            <Choice {...part} name="place" label="Place" choices={choicesOf(dialysisPlaces)} />
            <Field {...part} name="sessionsPerWeek" label="Sessions a week" type="number" />
            <Field {...part} name="sessionHours" label="Hours a session" type="number" />
            <Field {...part} name="ultrafiltrationLimit" label="Agreed ultrafiltration limit, mL/kg/h" type="number" />
          </>
        )}
        {isPeritoneal && (
          <>
            <Choice {...part} name="method" label="Method" choices={choicesOf(peritonealMethods)} />
            <Field {...part} name="absorbedShare" label="Glucose absorbed, from 0 to 1" type="number" />
          </>
        )}
        {isOnDialysis && <Field {...part} name="startedOn" label="Began on" type="date" />}
        {setting === 'transplant' && <Field {...part} name="transplantedOn" label="Transplanted on" type="date" />}
        {(setting === 'ckd-not-on-dialysis' || setting === 'transplant') && (
          <>
            <Choice {...part} name="stage" label="Stage set by the team" none="not set" choices={plainChoices(gfrCategories)} />
            <Field {...part} name="stageOn" label="Stage set on" type="date" />
          </>
        )}
      </div>
      <div className={layout.row}>
        <Tick {...part} name="diabetes" label="diabetes" />
        {setting === 'ckd-not-on-dialysis' && <Tick {...part} name="conservative" label="conservative care" />}
        <Tick {...part} name="acuteKidneyInjury" label="acute kidney injury" />
        <Tick {...part} name="pregnant" label="pregnant" />
        <Tick {...part} name="breastfeeding" label="breastfeeding" />
        {isPeritoneal && <Tick {...part} name="icodextrin" label="icodextrin" />}
      </div>
      {isPeritoneal && <Bags {...part} />}
    </fieldset>
  );
}
