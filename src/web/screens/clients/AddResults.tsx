import { useDeferredValue, useState } from 'react';
import type { ResultsJson } from '#core/client/assessment/assessment.ts';
import type { Client } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import type { AssessmentDraft } from './assessmentDraft.ts';
import { Issues } from './Issues.tsx';
import { Labs } from './LabRows.tsx';
import { askedElsewhere, questionsByRow } from './questionsByRow.ts';
import { blankLab, labsOf, weighingsOf } from './rowDrafts.ts';
import { useProposal } from './useProposal.ts';
import { Weighings } from './WeighingRows.tsx';

type Lists = Pick<AssessmentDraft, 'labs' | 'weighings'>;

/** Results and weights that came in since the newest assessment. They are asked about beside what is on record already. */
export function AddResults({
  client: { assessment, assessedOn },
  today,
  onSave,
  onCancel,
}: {
  readonly client: Client;
  readonly today: string;
  readonly onSave: (results: ResultsJson) => Promise<void>;
  readonly onCancel: () => void;
}) {
  const [draft, setDraft] = useState<Lists>(() => ({ labs: [blankLab(today)], weighings: [] }));
  const [error, setError] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const added = resultsOf(draft);
  const settled = resultsOf(useDeferredValue(draft));
  const proposal = useProposal(
    assessment && {
      ...assessment,
      labs: [...assessment.labs, ...settled.labs],
      weighings: [...assessment.weighings, ...settled.weighings],
    },
  );
  const issues = proposal.data?.issues ?? [];
  const before = { labs: assessment?.labs.length ?? 0, weighings: assessment?.weighings.length ?? 0 };
  const elsewhere = askedElsewhere(issues, before);
  return (
    <form
      className={`${layout.sheet} ${layout.stack}`}
      ref={focusFirstField}
      onSubmit={event => {
        event.preventDefault();
        setBusy(true);
        setError(undefined);
        onSave(added)
          .catch(setError)
          .finally(() => setBusy(false));
      }}
    >
      <h2>Add results</h2>
      <p className={text.soft}>Results and weights since the assessment of {assessedOn}. They join it; nothing else of it changes.</p>
      <Labs
        rows={draft.labs}
        today={today}
        onRows={labs => setDraft({ ...draft, labs })}
        questions={questionsByRow(draft.labs, 'labs', issues, before.labs)}
      />
      <fieldset className={layout.stack}>
        <legend>Weights</legend>
        <Weighings
          rows={draft.weighings}
          today={today}
          onRows={weighings => setDraft({ ...draft, weighings })}
          questions={questionsByRow(draft.weighings, 'weighings', issues, before.weighings)}
        />
      </fieldset>
      {elsewhere.length > 0 && (
        <div className={layout.notice} role="status">
          <Issues issues={elsewhere} />
        </div>
      )}
      <Told error={error ?? proposal.error} />
      <p className={layout.row}>
        <button type="submit" className={button.act} disabled={busy || added.labs.length + added.weighings.length === 0}>
          Keep the results
        </button>
        <button type="button" className={button.quiet} onClick={onCancel}>
          Cancel
        </button>
      </p>
    </form>
  );
}

function resultsOf({ labs, weighings }: Lists): ResultsJson {
  return { labs: labsOf(labs), weighings: weighingsOf(weighings) };
}
