import { weightUnits } from '#core/client/formulas/bodyUnits.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { RowAnswer } from './RowAnswer.tsx';
import type { WeighingDraft } from './rowDrafts.ts';
import { Select } from './Select.tsx';
import { plainChoices, weightKindChoices } from './vocabulary.ts';

/** Rows of a draft with what is asked about each; an assessment's, or those of results that are added to one. */
interface Rows {
  readonly rows: readonly WeighingDraft[];
  readonly today: string;
  readonly onRows: (rows: readonly WeighingDraft[]) => void;
  readonly questions: ReadonlyMap<number, string>;
}

/** Weights with their kind: only some kinds set a target. */
export function Weighings({ rows, today, onRows, questions }: Rows) {
  const change = (at: number, part: Partial<WeighingDraft>): void =>
    onRows(rows.map((one, index) => (index === at ? { ...one, ...part } : one)));
  return (
    <>
      {rows.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a weighing has no identity but its place while it is typed
        <div className={layout.row} key={at}>
          <label className={layout.field}>
            <span>Weight</span>
            <input
              type="number"
              step="any"
              value={one.value}
              onChange={event => change(at, { value: event.target.value, unitConfirmed: false })}
            />
          </label>
          <Select
            label="Unit"
            value={one.unit}
            choices={plainChoices(weightUnits)}
            onChoose={unit => change(at, { unit, unitConfirmed: false })}
          />
          <Select label="Kind" value={one.kind} choices={weightKindChoices} onChoose={kind => change(at, { kind })} />
          <label className={layout.field}>
            <span>On</span>
            <input type="date" value={one.on} onChange={event => change(at, { on: event.target.value })} />
          </label>
          <RowAnswer
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
          className={button.quiet}
          onClick={() => onRows([...rows, { value: '', unit: 'kg', kind: 'actual', on: today, unitConfirmed: false }])}
        >
          Add a weight
        </button>
      </p>
    </>
  );
}
