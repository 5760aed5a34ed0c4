import { useState } from 'react';
import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useSignActions } from './prescriptionActions.ts';
import { TargetRow } from './TargetRow.tsx';
import { beforeText, leftOut, signedBefore } from './typedDecision.ts';
import { typedPrescription } from './typedPrescription.ts';
import { vaultDraft } from './vaultDraft.ts';

/** The proposal, target by target: range, why, source, other guidelines' figures; edited with a reason, then signed as a whole. */
export function PrescriptionSheet({ client }: { readonly client: Client }) {
  if ((client.targets ?? []).length === 0)
    return <section className={layout.sheet}>No prescription is proposed until the questions above are answered.</section>;
  return <Proposed client={client} />;
}

function Proposed({ client }: { readonly client: Client }) {
  const { targets = [] } = client;
  const typed = useTyped(() => typedPrescription(client));
  const draft = useDraft(vaultDraft(client.id, 'prescription'), typed);
  // Not kept with what is typed: it is asked anew whenever something would be lost.
  const [isAcknowledged, setAcknowledged] = useState(false);
  const gone = leftOut(client, typed.values.decisions);
  const lost = targets.filter(({ item }) => gone.includes(item));
  const { sign, fault } = useSignActions(client, typed.values, lost.length > 0 && isAcknowledged, draft.forget);
  const decisions = typed.part('decisions');
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="prescription-title">
      <h2 id="prescription-title">Nutrition prescription, proposed</h2>
      <Draft draft={draft} />
      {targets.map(target => (
        <TargetRow key={target.item} target={target} before={signedBefore(client, target.item)} decision={decisions.field(target.item)} />
      ))}
      <ActionForm action={sign} className={`${layout.stack} ${layout.noprint}`}>
        <h3>Sign it</h3>
        <p className={`${text.small} ${text.soft}`}>What is signed is never changed: a later prescription takes its place.</p>
        <div className={layout.formgrid}>
          <Field label="Name" isRequired maxLength={200} {...typed.field('by')} />
          <Field label="Credentials" maxLength={200} {...typed.field('credentials')} />
        </div>
        {lost.length > 0 && (
          <div className={layout.notice}>
            <p>Signed before as your own decision, and otherwise now:</p>
            <ul>
              {lost.map(({ item, title }) => (
                <li key={item}>
                  {title}: {beforeText(signedBefore(client, item)!)}
                </li>
              ))}
            </ul>
            <Tick label="These are meant to change" isRequired value={isAcknowledged} onChange={setAcknowledged} />
          </div>
        )}
        <Told error={fault} />
        <p>
          <ActionButton action={sign} isMain submits />
        </p>
      </ActionForm>
    </section>
  );
}
