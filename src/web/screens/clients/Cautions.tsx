import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Client } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

type Caution = NonNullable<Client['cautions']>[number];

const contactWords: Readonly<Record<string, string>> = {
  'emergency-now': 'Emergency: now',
  'same-day': 'Contact the kidney team today',
  urgent: 'Contact the kidney team urgently',
  'within-days': 'Contact within days',
};

/** What must not be missed: refusals and questions, values that need contact the same day, cautions, and that targets are for licensed dietitians. */
export function Cautions({ client, onChanged }: { readonly client: Client; readonly onChanged: () => Promise<void> }) {
  const { cautions = [], bars = [], notice } = client;
  const urgent = cautions.filter(({ sameDay }) => sameDay);
  const others = cautions.filter(({ sameDay }) => !sameDay);
  return (
    <section className="stack" aria-label="Cautions">
      {bars.map(({ kind, told }) => (
        <div className="notice alarm" role="alert" key={told}>
          <p>
            <b>{kind === 'question' ? 'A question first.' : 'No target is proposed.'}</b> {told}
          </p>
        </div>
      ))}
      {urgent.map(caution => (
        <Urgent key={caution.id} caution={caution} client={client} onChanged={onChanged} />
      ))}
      {others.length > 0 && (
        <details className="sheet" open={others.length <= 3}>
          <summary>
            {others.length} caution{others.length === 1 ? '' : 's'}
          </summary>
          <ul>
            {others.map(({ id, told, because, source }) => (
              <li key={id}>
                {told}
                <span className="why">
                  {because} ({source})
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
  // A contact made before the newest assessment was about another value.
  const made = client.contacts.filter(({ cautionId, on }) => cautionId === caution.id && on >= (client.assessedOn ?? ''));
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
