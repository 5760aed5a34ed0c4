import { dialysateLabels } from '#core/client/formulas/dialysateGlucose.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import type { Part } from './DraftFields.tsx';
import type { BagDraft } from './rowDrafts.ts';
import { Select } from './Select.tsx';
import { plainChoices } from './vocabulary.ts';

/** Dialysate of a day: the glucose in it counts as energy. */
export function Bags({ draft, onChange }: Part) {
  const change = (at: number, part: Partial<BagDraft>): void =>
    onChange({ ...draft, bags: draft.bags.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  return (
    <>
      {draft.bags.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a bag has no identity but its place while it is typed
        <div className={layout.row} key={at}>
          <label className={layout.field}>
            <span>Bag, liters</span>
            <input type="number" step="any" value={one.liters} onChange={event => change(at, { liters: event.target.value })} />
          </label>
          <label className={layout.field}>
            <span>Glucose, %</span>
            <input type="number" step="any" value={one.percent} onChange={event => change(at, { percent: event.target.value })} />
          </label>
          <Select
            label="Labeled as"
            value={one.labeledAs}
            choices={plainChoices(dialysateLabels)}
            onChoose={labeledAs => change(at, { labeledAs })}
          />
        </div>
      ))}
      <p>
        <button
          type="button"
          className={button.quiet}
          onClick={() => onChange({ ...draft, bags: [...draft.bags, { liters: '', percent: '', labeledAs: 'dextrose' }] })}
        >
          Add a bag of the day
        </button>
      </p>
    </>
  );
}
