import { useState } from 'react';
import { answer, api } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';
import { type AssessmentDraft, labChoices, labDraftOf } from './assessmentDraft.ts';
import { weightKinds } from './vocabulary.ts';

/** The draft of an assessment, and what takes its place when a row changes. */
export interface Part {
  readonly draft: AssessmentDraft;
  readonly onChange: (draft: AssessmentDraft) => void;
}

/** Weights with their kind: only some kinds set a target. */
export function Weighings({ draft, today, onChange }: Part & { readonly today: string }) {
  const change = (at: number, part: Partial<AssessmentDraft['weighings'][number]>): void =>
    onChange({ ...draft, weighings: draft.weighings.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  return (
    <>
      {draft.weighings.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a weighing has no identity but its place while it is typed
        <div className="row" key={at}>
          <label className="field">
            <span>Weight</span>
            <input type="number" step="any" value={one.value} onChange={event => change(at, { value: event.target.value })} />
          </label>
          <label className="field">
            <span>Unit</span>
            <select value={one.unit} onChange={event => change(at, { unit: event.target.value })}>
              <option>kg</option>
              <option>lb</option>
            </select>
          </label>
          <label className="field">
            <span>Kind</span>
            <select value={one.kind} onChange={event => change(at, { kind: event.target.value })}>
              {weightKinds.map(([value, words]) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </label>
          <label className="field">
            <span>On</span>
            <input type="date" value={one.on} onChange={event => change(at, { on: event.target.value })} />
          </label>
          <label className="row">
            <input type="checkbox" checked={one.unitConfirmed} onChange={event => change(at, { unitConfirmed: event.target.checked })} />
            <span>unit checked</span>
          </label>
        </div>
      ))}
      <p>
        <button
          type="button"
          className="quiet"
          onClick={() =>
            onChange({
              ...draft,
              weighings: [...draft.weighings, { value: '', unit: 'kg', kind: 'actual', on: today, unitConfirmed: false }],
            })
          }
        >
          Add a weight
        </button>
      </p>
    </>
  );
}

/** Dialysate of a day: the glucose in it counts as energy. */
export function Bags({ draft, onChange }: Part) {
  const change = (at: number, part: Partial<AssessmentDraft['bags'][number]>): void =>
    onChange({ ...draft, bags: draft.bags.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  return (
    <>
      {draft.bags.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a bag has no identity but its place while it is typed
        <div className="row" key={at}>
          <label className="field">
            <span>Bag, liters</span>
            <input type="number" step="any" value={one.liters} onChange={event => change(at, { liters: event.target.value })} />
          </label>
          <label className="field">
            <span>Glucose, %</span>
            <input type="number" step="any" value={one.percent} onChange={event => change(at, { percent: event.target.value })} />
          </label>
          <label className="field">
            <span>Labeled as</span>
            <select value={one.labeledAs} onChange={event => change(at, { labeledAs: event.target.value })}>
              <option>dextrose</option>
              <option>glucose</option>
            </select>
          </label>
        </div>
      ))}
      <p>
        <button
          type="button"
          className="quiet"
          onClick={() => onChange({ ...draft, bags: [...draft.bags, { liters: '', percent: '', labeledAs: 'dextrose' }] })}
        >
          Add a bag of the day
        </button>
      </p>
    </>
  );
}

/** Laboratory results, typed or read from a file. */
export function Labs({ draft, today, onChange }: Part & { readonly today: string }) {
  const change = (at: number, part: Partial<AssessmentDraft['labs'][number]>): void =>
    onChange({ ...draft, labs: draft.labs.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  const unitsOf = (analyte: string): readonly string[] => labChoices.find(({ key }) => key === analyte)?.units ?? [];
  return (
    <fieldset className="stack">
      <legend>Laboratory results, each with its unit and day</legend>
      {draft.labs.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a result has no identity but its place while it is typed
        <div className="row" key={at}>
          <label className="field">
            <span>Result</span>
            <select
              value={one.analyte}
              onChange={event => change(at, { analyte: event.target.value, unit: unitsOf(event.target.value)[0] ?? '' })}
            >
              {labChoices.map(({ key, name }) => (
                <option key={key} value={key}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <label className="field">
            <span>Value</span>
            <input type="number" step="any" value={one.value} onChange={event => change(at, { value: event.target.value })} />
          </label>
          <label className="field">
            <span>Unit</span>
            <select value={one.unit} onChange={event => change(at, { unit: event.target.value })}>
              {unitsOf(one.analyte).map(unit => (
                <option key={unit}>{unit}</option>
              ))}
            </select>
          </label>
          <label className="field">
            <span>Taken on</span>
            <input type="date" value={one.takenOn} onChange={event => change(at, { takenOn: event.target.value })} />
          </label>
          <label className="row">
            <input type="checkbox" checked={one.hemolyzed} onChange={event => change(at, { hemolyzed: event.target.checked })} />
            <span>hemolyzed</span>
          </label>
        </div>
      ))}
      <LabImport onLabs={labs => onChange({ ...draft, labs: [...draft.labs, ...labs] })} />
      <p>
        <button
          type="button"
          className="quiet"
          onClick={() =>
            onChange({ ...draft, labs: [...draft.labs, labDraftOf({ analyte: 'potassium', unit: 'mmol/L', takenOn: today })] })
          }
        >
          Add a result
        </button>
      </p>
    </fieldset>
  );
}

/** Results from a file: CSV with a heading row, or FHIR R4 Observations. What could not be read is told, nothing is guessed. */
function LabImport({ onLabs }: { readonly onLabs: (labs: AssessmentDraft['labs']) => void }) {
  const [told, setTold] = useState<readonly string[]>([]);
  const [error, setError] = useState<unknown>();
  const read = async (file: File): Promise<void> => {
    try {
      setError(undefined);
      const { labs, issues } = await answer<{ labs: Record<string, unknown>[]; issues: string[] }>(
        api.clients.labs.$post({ json: { text: await file.text() } }),
      );
      onLabs(labs.map(labDraftOf));
      setTold([labs.length === 1 ? '1 result was read.' : `${labs.length} results were read.`, ...issues]);
    } catch (problem) {
      setError(problem);
    }
  };
  return (
    <div>
      <label className="quiet">
        Read results from a file (CSV or FHIR R4)
        <input
          type="file"
          className="unseen"
          accept=".csv,.tsv,.txt,.json"
          onChange={event => event.target.files?.[0] && void read(event.target.files[0])}
        />
      </label>
      {told.length > 0 && (
        <ul role="status">
          {told.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
      <Told error={error} />
    </div>
  );
}
