import { useDeferredValue, useState } from 'react';
import type { Client } from '../../api.ts';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { Told } from '../../ui/Told.tsx';
import { Labs, Weighings } from './AssessmentRows.tsx';
import { type AssessmentDraft, assessmentOf, draftOf, labDraftOf, questionsByRow } from './assessmentDraft.ts';
import { useProposal } from './useProposal.ts';

type Lists = Pick<AssessmentDraft, 'labs' | 'weighings'>;

/** Results and weights that came in since the newest assessment. They are asked about beside what is on record already. */
export function AddResults({
  client,
  today,
  onSave,
  onCancel,
}: {
  readonly client: Client;
  readonly today: string;
  readonly onSave: (results: { labs: Record<string, unknown>[]; weighings: Record<string, unknown>[] }) => Promise<void>;
  readonly onCancel: () => void;
}) {
  const [draft, setDraft] = useState<Lists>(() => ({
    labs: [labDraftOf({ analyte: 'potassium', unit: 'mmol/L', takenOn: today })],
    weighings: [],
  }));
  const [error, setError] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const known = client.assessment ?? {};
  const added = listsOf(draft, today);
  const [knownLabs, knownWeighings] = [listOf(known.labs), listOf(known.weighings)];
  const json = useDeferredValue(
    JSON.stringify({ ...known, labs: [...knownLabs, ...added.labs], weighings: [...knownWeighings, ...added.weighings] }),
  );
  const proposal = useProposal(json);
  const issues = proposal.data?.issues ?? [];
  const questions = {
    labs: questionsByRow(draft.labs, 'labs', issues, knownLabs.length),
    weighings: questionsByRow(draft.weighings, 'weighings', issues, knownWeighings.length),
  };
  const atRows = new Set([...questions.labs.values(), ...questions.weighings.values()]);
  const elsewhere = issues.filter(({ told }) => !atRows.has(told));
  return (
    <form
      className="sheet stack"
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
      <p className="soft">Results and weights since the assessment of {client.assessedOn}. They join it; nothing else of it changes.</p>
      <Labs rows={draft.labs} today={today} onRows={labs => setDraft({ ...draft, labs })} questions={questions.labs} />
      <fieldset className="stack">
        <legend>Weights</legend>
        <Weighings
          rows={draft.weighings}
          today={today}
          onRows={weighings => setDraft({ ...draft, weighings })}
          questions={questions.weighings}
        />
      </fieldset>
      {elsewhere.length > 0 && (
        <div className="notice" role="status">
          {elsewhere.map(({ kind, told }) => (
            <p key={told}>
              <b>{kind === 'question' ? 'A question.' : 'No target.'}</b> {told}
            </p>
          ))}
        </div>
      )}
      <Told error={error ?? proposal.error} />
      <p className="row">
        <button type="submit" className="act" disabled={busy || added.labs.length + added.weighings.length === 0}>
          Keep the results
        </button>
        <button type="button" className="quiet" onClick={onCancel}>
          Cancel
        </button>
      </p>
    </form>
  );
}

type Json = Record<string, unknown>;

function listsOf(draft: Lists, today: string): { labs: Json[]; weighings: Json[] } {
  const { labs, weighings } = assessmentOf({ ...draftOf(undefined, today), ...draft });
  return { labs: [...listOf(labs)], weighings: [...listOf(weighings)] };
}

function listOf(value: unknown): readonly Json[] {
  return Array.isArray(value) ? value : [];
}
