import { useDeferredValue } from 'react';
import type { ResultsJson } from '#core/client/assessment/assessment.ts';
import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useResultsActions } from './assessmentActions.ts';
import { Issues } from './Issues.tsx';
import { Labs } from './Labs.tsx';
import { askedElsewhere, questionsByRow } from './questionsByRow.ts';
import type { TypedAssessment } from './typedAssessment.ts';
import { blankLab, labsOf, weighingsOf } from './typedResults.ts';
import { useProposal } from './useProposal.ts';
import { vaultDraft } from './vaultDraft.ts';
import { Weighings } from './Weighings.tsx';

type TypedResults = Pick<TypedAssessment, 'labs' | 'weighings'>;

/** Results and weights that came in since the newest assessment. They are asked about beside what is on record already. */
export function AddResults(given: { readonly client: Client; readonly today: string; readonly onDone: () => void }) {
  const { client, today, onDone } = given;
  const { assessment, assessedOn } = client;
  const typed = useTyped<TypedResults>(() => ({ labs: [blankLab(today)], weighings: [] }));
  const draft = useDraft(vaultDraft(client.id, 'results'), typed);
  const { keep, cancel, fault } = useResultsActions(client, resultsOf(typed.values), { forget: draft.forget, onDone });
  const settled = resultsOf(useDeferredValue(typed.values));
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
  const { labs, weighings } = typed.values;
  return (
    <ActionForm action={keep} className={`${layout.sheet} ${layout.stack}`} isSentByEnter={false} formRef={focusFirstField}>
      <h2>Add results</h2>
      <Draft draft={draft} />
      <p className={text.soft}>Results and weights since the assessment of {assessedOn}. They join it; nothing else of it changes.</p>
      <Labs
        labs={typed.rows('labs')}
        today={today}
        client={{ name: client.name, ...(assessment !== undefined && 'bornOn' in assessment.age ? { bornOn: assessment.age.bornOn } : {}) }}
        questions={questionsByRow(labs, 'labs', issues, before.labs)}
      />
      <Weighings
        weighings={typed.rows('weighings')}
        today={today}
        questions={questionsByRow(weighings, 'weighings', issues, before.weighings)}
      />
      {elsewhere.length > 0 && (
        <div className={layout.notice} role="status">
          <Issues issues={elsewhere} />
        </div>
      )}
      <Told error={fault ?? proposal.error} />
      <p className={layout.row}>
        <ActionButton action={keep} isMain submits />
        <ActionButton action={cancel} />
      </p>
    </ActionForm>
  );
}

function resultsOf({ labs, weighings }: TypedResults): ResultsJson {
  return { labs: labsOf(labs), weighings: weighingsOf(weighings) };
}
