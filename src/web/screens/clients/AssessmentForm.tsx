import { useDeferredValue, useState } from 'react';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { Told } from '../../ui/Told.tsx';
import { Bags, Labs, type Part, Weighings } from './AssessmentRows.tsx';
import { type AssessmentDraft, assessmentOf, draftOf, questionsByRow } from './assessmentDraft.ts';
import { useProposal } from './useProposal.ts';
import { conditions, medicines, missingParts, settings, supplements, symptoms } from './vocabulary.ts';

/** A dated set of facts. Questions and refusals speak while it is typed; nothing is corrected silently. */
export function AssessmentForm({
  start,
  today,
  onSave,
  onCancel,
}: {
  readonly start: Readonly<Record<string, unknown>> | undefined;
  readonly today: string;
  readonly onSave: (assessment: Record<string, unknown>) => Promise<void>;
  readonly onCancel: () => void;
}) {
  const [draft, setDraft] = useState(() => draftOf(start, today));
  const [error, setError] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  // What is asked is what is looked at: a draft that settles later must not be sent half typed.
  const settled = useDeferredValue(draft);
  const json = JSON.stringify(assessmentOf(settled));
  const proposal = useProposal(json, stillMissing(settled).length === 0);
  const set = (key: string, value: string): void => setDraft({ ...draft, fields: { ...draft.fields, [key]: value } });
  const field = (key: string, name: string, type = 'text') => (
    <label className="field" key={key}>
      <span>{name}</span>
      <input type={type} step="any" value={draft.fields[key] ?? ''} onChange={event => set(key, event.target.value)} autoComplete="off" />
    </label>
  );
  const choice = (key: string, name: string, options: readonly (readonly [string, string])[]) => (
    <label className="field" key={key}>
      <span>{name}</span>
      <select value={draft.fields[key] ?? ''} onChange={event => set(key, event.target.value)}>
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
  const tick = (key: string, name: string) => (
    <label className="row" key={key}>
      <input type="checkbox" checked={draft.fields[key] === 'true'} onChange={event => set(key, String(event.target.checked))} />
      <span>{name}</span>
    </label>
  );
  const setting = draft.fields.setting;
  const issues = proposal.data?.issues ?? [];
  const missing = stillMissing(draft);
  return (
    <form
      className="sheet stack"
      ref={focusFirstField}
      onSubmit={event => {
        event.preventDefault();
        // What is missing is named beside the button; nothing is sent.
        if (missing.length > 0) return;
        setBusy(true);
        setError(undefined);
        onSave(assessmentOf(draft))
          .catch(setError)
          .finally(() => setBusy(false));
      }}
    >
      <h2>An assessment</h2>
      <p className="soft">What is not known stays empty. Enter weights in pounds and heights in feet and inches as they come.</p>
      <fieldset className="stack">
        <legend>Who and how treated</legend>
        <div className="formgrid">
          {field('on', 'Day of the assessment', 'date')}
          {choice('sex', 'Sex (for formulas)', [
            ['', 'choose'],
            ['female', 'female'],
            ['male', 'male'],
          ])}
          {field('bornOn', 'Born on', 'date')}
          {field('years', 'or age in years', 'number')}
          {choice('setting', 'Setting', [['', 'choose'], ...settings])}
          {setting === 'hemodialysis' && [
            choice('place', 'Place', [
              ['in-center', 'in center'],
              ['home', 'home'],
            ]),
            field('sessionsPerWeek', 'Sessions a week', 'number'),
            field('sessionHours', 'Hours a session', 'number'),
            field('ultrafiltrationLimit', 'Agreed ultrafiltration limit, mL/kg/h', 'number'),
          ]}
          {setting === 'peritoneal-dialysis' && [
            choice('method', 'Method', [
              ['capd', 'CAPD'],
              ['apd', 'APD'],
            ]),
            field('absorbedShare', 'Glucose absorbed, from 0 to 1', 'number'),
          ]}
          {(setting === 'hemodialysis' || setting === 'peritoneal-dialysis') && field('startedOn', 'Began on', 'date')}
          {setting === 'transplant' && field('transplantedOn', 'Transplanted on', 'date')}
          {(setting === 'ckd-not-on-dialysis' || setting === 'transplant') && [
            choice('stage', 'Stage set by the team', [
              ['', 'not set'],
              ...['G1', 'G2', 'G3a', 'G3b', 'G4', 'G5'].map(one => [one, one] as const),
            ]),
            field('stageOn', 'Stage set on', 'date'),
          ]}
        </div>
        <div className="row">
          {tick('diabetes', 'diabetes')}
          {setting === 'ckd-not-on-dialysis' && tick('conservative', 'conservative care')}
          {tick('acuteKidneyInjury', 'acute kidney injury')}
          {tick('pregnant', 'pregnant')}
          {tick('breastfeeding', 'breastfeeding')}
          {setting === 'peritoneal-dialysis' && tick('icodextrin', 'icodextrin')}
        </div>
        {setting === 'peritoneal-dialysis' && <Bags draft={draft} onChange={setDraft} />}
      </fieldset>
      <fieldset className="stack">
        <legend>Body and intake</legend>
        <div className="formgrid">
          {choice('heightUnit', 'Height in', [
            ['cm', 'cm'],
            ['ft', 'feet and inches'],
            ['in', 'inches'],
            ['m', 'm'],
          ])}
          {field('height', draft.fields.heightUnit === 'ft' ? 'Feet' : 'Height', 'number')}
          {draft.fields.heightUnit === 'ft' && field('inches', 'Inches', 'number')}
          {field('urine', 'Urine, mL a day', 'number')}
          {field('urineOn', 'Urine measured on', 'date')}
          {choice('appetite', 'Appetite', [
            ['', 'not asked'],
            ['good', 'good'],
            ['fair', 'fair'],
            ['poor', 'poor'],
          ])}
          {field('loss3', 'Weight loss in 3 months, %', 'number')}
          {field('loss6', 'Weight loss in 6 months, %', 'number')}
          {choice('lossCause', 'The loss was', [
            ['', 'not asked'],
            ['unintended', 'unintended'],
            ['wanted', 'wanted'],
            ['fluid', 'fluid'],
          ])}
          {field('muscle3', 'Muscle loss in 3 months, %', 'number')}
          {field('muscle6', 'Muscle loss in 6 months, %', 'number')}
          {field('littleForDays', 'Days with next to nothing eaten', 'number')}
          {field('energyKcal', 'Energy eaten, kcal a day', 'number')}
          {field('proteinG', 'Protein eaten, g a day', 'number')}
        </div>
        <Weighings
          rows={draft.weighings}
          today={today}
          onRows={weighings => setDraft({ ...draft, weighings })}
          questions={questionsByRow(draft.weighings, 'weighings', issues)}
        />
      </fieldset>
      <Labs
        rows={draft.labs}
        today={today}
        onRows={labs => setDraft({ ...draft, labs })}
        questions={questionsByRow(draft.labs, 'labs', issues)}
      />
      <Ticks name="Conditions" list="conditions" options={conditions} draft={draft} onChange={setDraft} />
      <Ticks name="Missing parts of the body, one side" list="missingParts" options={missingParts} draft={draft} onChange={setDraft} />
      <Ticks name="Medicines, by class" list="medicines" options={medicines} draft={draft} onChange={setDraft} />
      <Ticks name="Supplements" list="supplements" options={supplements} draft={draft} onChange={setDraft} />
      <Ticks name="Symptoms" list="symptoms" options={symptoms} draft={draft} onChange={setDraft} />
      <fieldset>
        <legend>Food, goals and steps taken</legend>
        <div className="formgrid">
          {field('allergies', 'Allergies (commas between)')}
          {field('avoidedFoods', 'Foods avoided (commas between)')}
          {field('foodAccess', 'Access to food')}
          {field('goals', 'Goals (commas between)')}
          {field('raasChangedOn', 'RAAS inhibitor begun or changed on', 'date')}
          {field('causesCheckedOn', 'High potassium: other causes gone through on', 'date')}
          {field('additivesCutOn', 'High potassium: additives and salt substitutes cut on', 'date')}
          {field('lastScreenedOn', 'Last screened on', 'date')}
          {field('lastFullAssessmentOn', 'Last full assessment on', 'date')}
        </div>
      </fieldset>
      {missing.length > 0 && (
        <p className="notice" role="status">
          Before anything can be proposed: {missing.join('; ')}.
        </p>
      )}
      {missing.length === 0 && proposal.error !== null && <Told error={proposal.error} />}
      {missing.length === 0 && proposal.data !== undefined && (
        <div className="notice" role="status">
          {proposal.data.issues.length === 0 ? <p>So far a prescription can be proposed.</p> : null}
          {proposal.data.issues.map(({ kind, told }) => (
            <p key={told}>
              <b>{kind === 'question' ? 'A question.' : 'No target.'}</b> {told}
            </p>
          ))}
          {proposal.data.cautions
            .filter(({ sameDay }) => sameDay)
            .map(({ id, told }) => (
              <p key={id}>
                <b>Contact the same day.</b> {told}
              </p>
            ))}
        </div>
      )}
      <Told error={error} />
      <p className="row">
        <button type="submit" className="act" disabled={busy}>
          Keep the assessment
        </button>
        <button type="button" className="quiet" onClick={onCancel}>
          Cancel
        </button>
      </p>
    </form>
  );
}

/** What has no usual value: neither sex nor age is filled in for anybody. */
function stillMissing({ fields }: AssessmentDraft): readonly string[] {
  const f = (key: string): string => (fields[key] ?? '').trim();
  return [
    ...(f('setting') === '' ? ['choose the setting'] : []),
    ...(f('sex') === '' ? ['choose the sex that formulas go by'] : []),
    ...(f('bornOn') === '' && f('years') === '' ? ['type the day of birth or the age'] : []),
  ];
}

function Ticks({
  name,
  list,
  options,
  draft,
  onChange,
}: Part & {
  readonly name: string;
  readonly list: keyof AssessmentDraft['ticked'];
  readonly options: readonly (readonly [string, string])[];
}) {
  const ticked = draft.ticked[list];
  return (
    <fieldset>
      <legend>{name}</legend>
      <div className="ticks">
        {options.map(([key, words]) => (
          <label className="row" key={key}>
            <input
              type="checkbox"
              checked={ticked.includes(key)}
              onChange={event =>
                onChange({
                  ...draft,
                  ticked: { ...draft.ticked, [list]: event.target.checked ? [...ticked, key] : ticked.filter(one => one !== key) },
                })
              }
            />
            <span>{words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
