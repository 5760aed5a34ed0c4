import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { Contact } from '#core/client/cautions/caution.ts';
import { answer, api, type Client } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

type Caution = NonNullable<Client['cautions']>[number];

const contactWords: Readonly<Record<Contact, string>> = {
  'emergency-now': 'Emergency: now',
  'same-day': 'Contact the kidney team today',
  urgent: 'Contact the kidney team urgently',
  'within-days': 'Contact within days',
};

/** What must not be missed: refusals and questions, values that need contact the same day, cautions, and that targets are for licensed dietitians. */
export function Cautions({
  client,
  onChanged,
  onAnswer,
}: {
  readonly client: Client;
  readonly onChanged: () => Promise<void>;
  /** Opens the form in which a question is answered. */
  readonly onAnswer: () => void;
}) {
  const { cautions = [], issues = [], notice } = client;
  const urgent = cautions.filter(({ sameDay }) => sameDay);
  const own = cautions.filter(({ sameDay, isOwn }) => !sameDay && isOwn);
  const others = cautions.filter(({ sameDay, isOwn }) => !sameDay && !isOwn);
  return (
    <section className="stack" aria-label="Cautions">
      {issues.map(({ kind, told }) => (
        <div className="notice alarm" role="alert" key={told}>
          <p>
            <b>{kind === 'question' ? 'A question first.' : 'No target is proposed.'}</b> {told}
          </p>
          {kind === 'question' && (
            <p className="noprint">
              <button type="button" className="quiet" onClick={onAnswer}>
                Answer it in a new assessment
              </button>
            </p>
          )}
        </div>
      ))}
      {urgent.map(caution => (
        <Urgent key={caution.id} caution={caution} client={client} onChanged={onChanged} />
      ))}
      {own.length > 0 && (
        <div className="sheet">
          <h2>From this client’s record</h2>
          <CautionList cautions={own} />
        </div>
      )}
      {others.length > 0 && (
        <details className="sheet">
          <summary>
            {others.length} caution{others.length === 1 ? '' : 's'} that {others.length === 1 ? 'holds' : 'hold'} in this setting
          </summary>
          <CautionList cautions={others} />
        </details>
      )}
      {client.contacts.length > 0 && (
        <details className="sheet">
          <summary>Who was told: {client.contacts.length}</summary>
          <ul>
            {client.contacts.map(({ at, told, about }) => (
              <li key={at}>
                {told}
                <span className="why">
                  {at.slice(0, 16).replace('T', ' ')} UTC{about === undefined ? '' : `, of ${about}`}
                </span>
              </li>
            ))}
          </ul>
        </details>
      )}
      <p className="small soft">{notice}</p>
    </section>
  );
}

function CautionList({ cautions }: { readonly cautions: readonly Caution[] }) {
  return (
    <ul>
      {cautions.map(({ id, told, because, source, contact }) => (
        <li key={id}>
          {contact !== undefined && <b>{contactWords[contact]}. </b>}
          {told}
          <span className="why">
            {because} ({source})
          </span>
        </li>
      ))}
    </ul>
  );
}

/** A value that needs contact, with the record of who was told and when. */
function Urgent({
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
    <div className="notice alarm" role="alert">
      <p>
        <b>{contactWords[caution.contact ?? 'same-day']}.</b> {caution.told}
      </p>
      <p className="small">
        {caution.because} ({caution.source}). Local protocols come first.
      </p>
      {made.map(one => (
        <p key={one.at} className="small">
          Told: {one.told}, {one.at.slice(0, 16).replace('T', ' ')} UTC.
        </p>
      ))}
      <form
        className="row noprint"
        onSubmit={event => {
          event.preventDefault();
          save.mutate();
        }}
      >
        <label className="field">
          <span>Who was told</span>
          <input type="text" required maxLength={300} value={told} onChange={event => setTold(event.target.value)} autoComplete="off" />
        </label>
        <button type="submit" className="quiet" disabled={save.isPending}>
          Note it, with the time
        </button>
      </form>
      <Told error={save.error} />
    </div>
  );
}
