import { type Analyte, analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import { unitsOf } from '#core/client/labs/labValue.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { LabImport } from './LabImport.tsx';
import { LabSample } from './LabSample.tsx';
import { RowAnswer } from './RowAnswer.tsx';
import { blankLab, type LabDraft } from './rowDrafts.ts';
import { Select } from './Select.tsx';
import { type Choices, plainChoices } from './vocabulary.ts';

const analyteChoices: Choices<Analyte> = analyteKeys.map(key => [key, analyteFacts(key).name]);

/** Rows of a draft with what is asked about each; an assessment's, or those of results that are added to one. */
interface Rows {
  readonly rows: readonly LabDraft[];
  readonly today: string;
  readonly onRows: (rows: readonly LabDraft[]) => void;
  readonly questions: ReadonlyMap<number, string>;
}

/** Laboratory results, typed or read from a file. */
export function Labs({ rows, today, onRows, questions }: Rows) {
  const change = (at: number, part: Partial<LabDraft>): void =>
    onRows(rows.map((one, index) => (index === at ? { ...one, ...part } : one)));
  return (
    <fieldset className={layout.stack}>
      <legend>Laboratory results, each with its unit and day</legend>
      {rows.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a result has no identity but its place while it is typed
        <div className={layout.row} key={at}>
          <Select
            label="Result"
            value={one.analyte}
            choices={analyteChoices}
            onChoose={analyte => change(at, { analyte, unit: analyteFacts(analyte).unit, confirmed: false })}
          />
          <label className={layout.field}>
            <span>Value</span>
            <input
              type="number"
              step="any"
              value={one.value}
              onChange={event => change(at, { value: event.target.value, confirmed: false })}
            />
          </label>
          <Select
            label="Unit"
            value={one.unit}
            choices={plainChoices(unitsOf(analyteFacts(one.analyte)))}
            onChoose={unit => change(at, { unit, confirmed: false })}
          />
          <label className={layout.field}>
            <span>Taken on</span>
            <input type="date" value={one.takenOn} onChange={event => change(at, { takenOn: event.target.value })} />
          </label>
          <label className={layout.row}>
            <input type="checkbox" checked={one.hemolyzed} onChange={event => change(at, { hemolyzed: event.target.checked })} />
            <span>hemolyzed</span>
          </label>
          <LabSample lab={one} onChange={part => change(at, part)} />
          <RowAnswer
            question={questions.get(at)}
            is={one.confirmed}
            name={`${one.value} ${one.unit}`}
            onAnswer={confirmed => change(at, { confirmed })}
          />
        </div>
      ))}
      <LabImport onLabs={labs => onRows([...rows, ...labs])} />
      <p>
        <button type="button" className={button.quiet} onClick={() => onRows([...rows, blankLab(today)])}>
          Add a result
        </button>
      </p>
    </fieldset>
  );
}
