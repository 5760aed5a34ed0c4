import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import type { Action } from '../../ui/action/action.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { shownDay } from './shownDay.ts';
import { type PickWeight, WeightChoice } from './WeightChoice.tsx';

/** What the targets rest on: the weight, what is on record and not used, what changed since the assessment before. It can be corrected by a later one. */
export function AssessmentBehind(given: { readonly client: Client; readonly correct: Action; readonly onPick: PickWeight }) {
  const { client, correct, onPick } = given;
  const { assessedOn, weightMissing, notUsed = [], changes = [], assessments, assessmentId } = client;
  const corrected = assessments.find(({ id }) => id === assessmentId)?.corrects;
  const first = assessments.find(({ id }) => id === corrected);
  return (
    <details className={layout.noprint}>
      <summary>
        Assessment of {assessedOn === undefined ? '' : shownDay(assessedOn)}
        {first === undefined ? '' : `, which corrects the one of ${shownDay(first.on)}`}
        {notUsed.length > 0 && `; ${notUsed.length} on record, not used`}
        {weightMissing !== undefined && `; ${weightMissing}`}
      </summary>
      <div className={layout.stack}>
        <WeightChoice weight={client.weight} onPick={onPick} />
        {client.weight !== undefined && <p className={text.why}>{client.weight.why}</p>}
        {weightMissing !== undefined && <p>{weightMissing}</p>}
        <Told title="On record, not used" of={notUsed} />
        <Told title="Since the assessment before" of={changes} />
        <p>
          <ActionButton action={correct} />
        </p>
      </div>
    </details>
  );
}

function Told({ title, of }: { readonly title: string; readonly of: readonly string[] }) {
  if (of.length === 0) return null;
  return (
    <div>
      <h3>{title}</h3>
      <ul className={text.small}>
        {of.map(one => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}
