import { useDeferredValue, useState } from 'react';
import type { AssessmentJson } from '#core/client/assessment/assessment.ts';
import type { Carried } from '#core/client/formulas/catalog/assessmentFields.ts';
import type { Proposal } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { draftOf } from './assessmentDraft.ts';
import { assessmentOf, stillMissing } from './assessmentOf.ts';
import { BodyFields, FoodFields } from './BodyFields.tsx';
import { withCarried } from './carriedDraft.ts';
import { Issues } from './Issues.tsx';
import { Labs } from './LabRows.tsx';
import { PersonFields } from './PersonFields.tsx';
import { questionsByRow } from './questionsByRow.ts';
import { TickedLists } from './TickedLists.tsx';
import { useProposal } from './useProposal.ts';
import { Weighings } from './WeighingRows.tsx';

/** A dated set of facts. Questions and refusals speak while it is typed; nothing is corrected silently. */
export function AssessmentForm({
  start,
  carried,
  today,
  onSave,
  onCancel,
}: {
  readonly start: AssessmentJson | undefined;
  /** A result of a calculator that is filled in. */
  readonly carried?: Carried | undefined;
  readonly today: string;
  readonly onSave: (assessment: AssessmentJson) => Promise<void>;
  readonly onCancel: () => void;
}) {
  const [draft, setDraft] = useState(() => {
    const begun = draftOf(start, today);
    return carried === undefined ? begun : withCarried(begun, carried);
  });
  const [error, setError] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  // What is asked is what is looked at: a draft that settles later must not be sent half typed.
  const proposal = useProposal(assessmentOf(useDeferredValue(draft)));
  const issues = proposal.data?.issues ?? [];
  const missing = stillMissing(draft);
  const part = { draft, onChange: setDraft };
  return (
    <form
      className={`${layout.sheet} ${layout.stack}`}
      ref={focusFirstField}
      onSubmit={event => {
        event.preventDefault();
        const assessment = assessmentOf(draft);
        // What is missing is named beside the button; nothing is sent.
        if (assessment === undefined || stillMissing(draft).length > 0) return;
        setBusy(true);
        setError(undefined);
        onSave(assessment)
          .catch(setError)
          .finally(() => setBusy(false));
      }}
    >
      <h2>An assessment</h2>
      <p className={text.soft}>What is not known stays empty. Enter weights in pounds and heights in feet and inches as they come.</p>
      <PersonFields {...part} />
      <fieldset className={layout.stack}>
        <legend>Body and intake</legend>
        <BodyFields {...part} />
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
      <TickedLists {...part} />
      <FoodFields {...part} />
      {missing.length > 0 && (
        <p className={layout.notice} role="status">
          Before anything can be proposed: {missing.join('; ')}.
        </p>
      )}
      {missing.length === 0 && proposal.error !== null && <Told error={proposal.error} />}
      {missing.length === 0 && proposal.data !== undefined && <SoFar proposal={proposal.data} />}
      <Told error={error} />
      <p className={layout.row}>
        <button type="submit" className={button.act} disabled={busy}>
          Keep the assessment
        </button>
        <button type="button" className={button.quiet} onClick={onCancel}>
          Cancel
        </button>
      </p>
    </form>
  );
}

/** Whether what is typed so far could be proposed from, and who must be told today. */
function SoFar({ proposal: { issues, cautions } }: { readonly proposal: Proposal }) {
  return (
    <div className={layout.notice} role="status">
      {issues.length === 0 ? <p>So far a prescription can be proposed.</p> : null}
      <Issues issues={issues} />
      {cautions
        .filter(({ sameDay }) => sameDay)
        .map(({ id, told }) => (
          <p key={id}>
            <b>Contact the same day.</b> {told}
          </p>
        ))}
    </div>
  );
}
