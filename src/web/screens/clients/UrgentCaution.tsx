import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { Contact } from '#core/client/cautions/caution.ts';
import { answer, api, type Client } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';

export type Caution = NonNullable<Client['cautions']>[number];

export const contactWords: Readonly<Record<Contact, string>> = {
  'emergency-now': 'Emergency: now',
  'same-day': 'Contact the kidney team today',
  urgent: 'Contact the kidney team urgently',
  'within-days': 'Contact within days',
};

/** A value that needs contact, with the record of who was told and when. */
export function UrgentCaution({
  caution,
  client,
  onChanged,
}: {
  readonly caution: Caution;
  readonly client: Client;
  readonly onChanged: () => Promise<void>;
}) {
  const [told, setTold] = useState('');
  // A contact made before the day of the value was about another one.
  const made = client.contacts.filter(({ cautionId, on }) => cautionId === caution.id && on >= (caution.since ?? client.assessedOn ?? ''));
  const save = useMutation({
    mutationFn: () =>
      answer(
        api.clients[':id'].contacts.$post({ param: { id: client.id }, json: { version: client.version, cautionId: caution.id, told } }),
      ),
    onSuccess: async () => {
      setTold('');
      await onChanged();
    },
  });
  return (
    <div className={`${layout.notice} ${layout.alarm}`} role="alert">
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
      <form
        className={`${layout.row} ${layout.noprint}`}
        onSubmit={event => {
          event.preventDefault();
          save.mutate();
        }}
      >
        <label className={layout.field}>
          <span>Who was told</span>
          <input type="text" required maxLength={300} value={told} onChange={event => setTold(event.target.value)} autoComplete="off" />
        </label>
        <button type="submit" className={button.quiet} disabled={save.isPending}>
          Note it, with the time
        </button>
      </form>
      <Told error={save.error} />
    </div>
  );
}
