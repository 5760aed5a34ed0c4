import { useState } from 'react';
import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useSignActions } from './prescriptionActions.ts';
import { beforeText, leftOut, signedBefore } from './typedDecision.ts';
import type { TypedPrescription } from './typedPrescription.ts';

/** Signing the lines as a whole. What is still to be written is opened and told first; own choices that would be left out are asked about. */
export function SignForm(given: {
  readonly client: Client;
  readonly typed: Typed<TypedPrescription>;
  readonly unwritten: readonly string[];
  readonly onUnwritten: () => void;
  readonly forget: () => Promise<void>;
}) {
  const { client, typed, unwritten, onUnwritten, forget } = given;
  // Not kept with what is typed: it is asked anew whenever something would be lost.
  const [isAcknowledged, setAcknowledged] = useState(false);
  const [isTold, setTold] = useState(false);
  const gone = leftOut(client, typed.values.decisions);
  const lost = (client.targets ?? []).filter(({ item }) => gone.includes(item));
  const show = (): void => {
    setTold(true);
    onUnwritten();
  };
  const { sign, fault } = useSignActions(client, typed.values, lost.length > 0 && isAcknowledged, forget, {
    count: unwritten.length,
    show,
  });
  const titles = (client.targets ?? []).filter(({ item }) => unwritten.includes(item)).map(({ title }) => title.toLowerCase());
  return (
    <ActionForm action={sign} className={`${layout.stack} ${layout.noprint}`}>
      <div className={layout.row}>
        <Field label="Name" isRequired maxLength={200} {...typed.field('by')} />
        <Field label="Credentials" maxLength={200} {...typed.field('credentials')} />
        <ActionButton action={sign} isMain submits />
      </div>
      <p className={`${text.small} ${text.soft}`}>What is signed is never changed: a later prescription takes its place.</p>
      {isTold && titles.length > 0 && (
        <p role="alert">Not signed yet. Take what is proposed, or write the figure and the reason, for: {titles.join(', ')}.</p>
      )}
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
    </ActionForm>
  );
}
