import type { Contact } from '#core/client/cautions/caution.ts';
import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import styles from './Cautions.module.css';
import { useContactActions } from './clientActions.ts';

export type Caution = NonNullable<Client['cautions']>[number];

export const contactWords: Readonly<Record<Contact, string>> = {
  'emergency-now': 'Emergency: now',
  'same-day': 'Contact the kidney team today',
  urgent: 'Contact the kidney team urgently',
  'within-days': 'Contact within days',
};

/** A value that needs contact, with the record of who was told and when. */
export function UrgentCaution({ caution, client }: { readonly caution: Caution; readonly client: Client }) {
  const typed = useTyped({ told: '' });
  const { note, fault } = useContactActions(client, caution.id, typed);
  // A contact made before the day of the value was about another one.
  const made = client.contacts.filter(({ cautionId, on }) => cautionId === caution.id && on >= (caution.since ?? client.assessedOn ?? ''));
  return (
    <div className={styles.now} role="alert">
      <div>
        <p>
          <b>{contactWords[caution.contact ?? 'same-day']}.</b> {caution.told}
        </p>
        <p className={text.small}>
          {caution.because} ({caution.source}). Local protocols come first.
        </p>
        {made.map(one => (
          <p key={one.at} className={text.small}>
            Told: {one.told}, {one.at.slice(0, 16).replace('T', ' ')} UTC.
          </p>
        ))}
      </div>
      <ActionForm action={note} className={`${layout.row} ${layout.noprint}`} isOffered={false}>
        <Field label="Who was told" isRequired maxLength={300} {...typed.field('told')} />
        <ActionButton action={note} submits />
      </ActionForm>
      <Told error={fault} />
    </div>
  );
}
