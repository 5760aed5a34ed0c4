import { type DrawnTime, drawnTimes } from '#core/client/assessment/vocabularies.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import type { LabDraft } from './rowDrafts.ts';
import { Select } from './Select.tsx';
import { type Choices, choicesOf } from './vocabulary.ts';

const drawnChoices: Choices<DrawnTime | ''> = [['', 'not known'], ...choicesOf(drawnTimes)];

/** What seldom comes with a result: its hour, before or after dialysis, and the laboratory's own limits. */
export function LabSample({ lab, onChange }: { readonly lab: LabDraft; readonly onChange: (part: Partial<LabDraft>) => void }) {
  return (
    <details className={text.small}>
      <summary>
        Hour, dialysis, laboratory’s limits{lab.takenAt + lab.drawn + lab.lowerNormal + lab.upperNormal === '' ? '' : ' (given)'}
      </summary>
      <div className={layout.row}>
        <label className={layout.field}>
          <span>Taken at</span>
          <input type="time" value={lab.takenAt} onChange={event => onChange({ takenAt: event.target.value })} />
        </label>
        <Select label="Drawn" value={lab.drawn} choices={drawnChoices} onChoose={drawn => onChange({ drawn })} />
        <label className={layout.field}>
          <span>Lower limit</span>
          <input type="number" step="any" value={lab.lowerNormal} onChange={event => onChange({ lowerNormal: event.target.value })} />
        </label>
        <label className={layout.field}>
          <span>Upper limit</span>
          <input type="number" step="any" value={lab.upperNormal} onChange={event => onChange({ upperNormal: event.target.value })} />
        </label>
      </div>
    </details>
  );
}
