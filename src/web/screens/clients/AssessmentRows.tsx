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

/** Rows of a draft with what is asked about each; an assessment's, or those of results that are added to one. */
interface Rows<List extends 'labs' | 'weighings'> {
  readonly rows: AssessmentDraft[List];
  readonly today: string;
  readonly onRows: (rows: AssessmentDraft[List]) => void;
  readonly questions: ReadonlyMap<number, string>;
}

/** A question about a row, with the tick that answers it. Another value or unit is asked about anew. */
function Answer({
  question,
  is,
  name,
  onAnswer,
}: {
  readonly question: string | undefined;
  readonly is: boolean;
  readonly name: string;
  readonly onAnswer: (yes: boolean) => void;
}) {
  if (question === undefined && !is) return null;
  return (
    <div className="notice">
      {question === undefined ? null : (
        <p>
          <b>A question.</b> {question}
        </p>
      )}
      <label className="row">
        <input type="checkbox" checked={is} onChange={event => onAnswer(event.target.checked)} />
        <span>Yes, {name} is right</span>
      </label>
    </div>
  );
}

/** Weights with their kind: only some kinds set a target. */
export function Weighings({ rows, today, onRows, questions }: Rows<'weighings'>) {
  const change = (at: number, part: Partial<AssessmentDraft['weighings'][number]>): void =>
    onRows(rows.map((one, index) => (index === at ? { ...one, ...part } : one)));
  return (
    <>
      {rows.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a weighing has no identity but its place while it is typed
        <div className="row" key={at}>
          <label className="field">
            <span>Weight</span>
            <input
              type="number"
              step="any"
              value={one.value}
              onChange={event => change(at, { value: event.target.value, unitConfirmed: false })}
            />
          </label>
          <label className="field">
            <span>Unit</span>
            <select value={one.unit} onChange={event => change(at, { unit: event.target.value, unitConfirmed: false })}>
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
          <Answer
            question={questions.get(at)}
            is={one.unitConfirmed}
            name={`${one.value} ${one.unit}`}
            onAnswer={unitConfirmed => change(at, { unitConfirmed })}
          />
        </div>
      ))}
      <p>
        <button
          type="button"
          className="quiet"
          onClick={() => onRows([...rows, { value: '', unit: 'kg', kind: 'actual', on: today, unitConfirmed: false }])}
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
export function Labs({ rows, today, onRows, questions }: Rows<'labs'>) {
  const change = (at: number, part: Partial<AssessmentDraft['labs'][number]>): void =>
    onRows(rows.map((one, index) => (index === at ? { ...one, ...part } : one)));
  const unitsOf = (analyte: string): readonly string[] => labChoices.find(({ key }) => key === analyte)?.units ?? [];
  return (
    <fieldset className="stack">
      <legend>Laboratory results, each with its unit and day</legend>
      {rows.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a result has no identity but its place while it is typed
        <div className="row" key={at}>
          <label className="field">
            <span>Result</span>
            <select
              value={one.analyte}
              onChange={event => change(at, { analyte: event.target.value, unit: unitsOf(event.target.value)[0] ?? '', confirmed: false })}
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
            <input
              type="number"
              step="any"
              value={one.value}
              onChange={event => change(at, { value: event.target.value, confirmed: false })}
            />
          </label>
          <label className="field">
            <span>Unit</span>
            <select value={one.unit} onChange={event => change(at, { unit: event.target.value, confirmed: false })}>
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
          <details className="small">
            <summary>
              Hour, dialysis, laboratory’s limits{one.takenAt + one.drawn + one.lowerNormal + one.upperNormal === '' ? '' : ' (given)'}
            </summary>
            <div className="row">
              <label className="field">
                <span>Taken at</span>
                <input type="time" value={one.takenAt} onChange={event => change(at, { takenAt: event.target.value })} />
              </label>
              <label className="field">
                <span>Drawn</span>
                <select value={one.drawn} onChange={event => change(at, { drawn: event.target.value })}>
                  <option value="">not known</option>
                  <option value="before-dialysis">before dialysis</option>
                  <option value="after-dialysis">after dialysis</option>
                </select>
              </label>
              <label className="field">
                <span>Lower limit</span>
                <input
                  type="number"
                  step="any"
                  value={one.lowerNormal}
                  onChange={event => change(at, { lowerNormal: event.target.value })}
                />
              </label>
              <label className="field">
                <span>Upper limit</span>
                <input
                  type="number"
                  step="any"
                  value={one.upperNormal}
                  onChange={event => change(at, { upperNormal: event.target.value })}
                />
              </label>
            </div>
          </details>
          <Answer
            question={questions.get(at)}
            is={one.confirmed}
            name={`${one.value} ${one.unit}`}
            onAnswer={confirmed => change(at, { confirmed })}
          />
        </div>
      ))}
      <LabImport onLabs={labs => onRows([...rows, ...labs])} />
      <p>
        <button
          type="button"
          className="quiet"
          onClick={() => onRows([...rows, labDraftOf({ analyte: 'potassium', unit: 'mmol/L', takenOn: today })])}
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
