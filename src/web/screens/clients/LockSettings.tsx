import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import { thePresence } from '../../lock/lockPresence.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { DeleteEarlierCopies } from '../data/DeleteEarlierCopies.tsx';
import { PassphraseField } from './PassphraseField.tsx';
import { TakeOffPassphrase } from './TakeOffPassphrase.tsx';

/** Open: the passphrase is set, changed or taken off, and when it locks by itself. */
export function LockSettings({ hasPassphrase, idleMinutes }: { readonly hasPassphrase: boolean; readonly idleMinutes: number }) {
  const lock = useMutation({
    mutationFn: () => answer(api.clients.lock.$post({ json: { open: false } })),
    onSuccess: status => thePresence().learn(status),
  });
  return (
    <section className={`${layout.sheet} ${layout.stack} ${layout.noprint}`} aria-label="The lock of client data">
      {hasPassphrase && (
        <p className={layout.row}>
          <button type="button" className={button.act} onClick={() => lock.mutate()}>
            Lock now
          </button>
          <span className={`${text.small} ${text.soft}`}>
            It locks by itself when the last window is closed, when nobody types or points for {idleMinutes} min, and when the program ends.
          </span>
        </p>
      )}
      <Told error={lock.error} />
      {hasPassphrase && <UnlockedCopies />}
      <details>
        <summary>
          {hasPassphrase ? 'Locked by a passphrase when you leave' : 'Not locked: anyone using this computer account can read client data'}
        </summary>
        <div className={layout.stack}>
          <NewPassphrase hasPassphrase={hasPassphrase} />
          {hasPassphrase && <IdleMinutes minutes={idleMinutes} />}
          {hasPassphrase && <TakeOffPassphrase />}
        </div>
      </details>
    </section>
  );
}

/** Copies of before the passphrase. */
function UnlockedCopies() {
  const copies = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()) });
  const count = (copies.data?.copies.filter(({ holdsKey }) => holdsKey).length ?? 0) + (copies.data?.earlier.holdKey ?? 0);
  if (count === 0) return null;
  return (
    <div className={layout.stack}>
      <p>
        <b>
          {count === 1 ? 'A daily copy was' : `${count} daily copies were`} made before the passphrase: whoever has{' '}
          {count === 1 ? 'it' : 'one'} can read the records in it.
        </b>
      </p>
      <DeleteEarlierCopies />
    </div>
  );
}

function NewPassphrase({ hasPassphrase }: { readonly hasPassphrase: boolean }) {
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const [again, setAgain] = useState('');
  const isMistyped = again !== '' && again !== next;
  const change = useMutation({
    mutationFn: () => answer(api.clients.passphrase.$put({ json: hasPassphrase ? { current, next } : { next } })),
    onSuccess: status => {
      for (const empty of [setCurrent, setNext, setAgain]) empty('');
      thePresence().learn(status);
    },
  });
  return (
    <form
      className={layout.stack}
      onSubmit={event => {
        event.preventDefault();
        if (next !== '' && next === again) change.mutate();
      }}
    >
      <p className={text.small}>
        A passphrase encrypts client data on this computer. Nobody can open it without: losing the passphrase loses the data. Export first,
        and keep the export somewhere safe. Use 15 characters or more; a few unrelated words are hard to guess and easy to keep.
      </p>
      <p className={text.small}>
        {hasPassphrase
          ? 'Copies and archives made until now still open with the passphrase of before.'
          : 'Daily copies made until now hold the key: whoever has one can read the records in it. They can be deleted here once the passphrase is set.'}
      </p>
      <div className={layout.formgrid}>
        {hasPassphrase && <PassphraseField label="Passphrase now" value={current} onChange={setCurrent} autoComplete="current-password" />}
        <PassphraseField label="New passphrase, 15 characters or more" value={next} onChange={setNext} autoComplete="new-password" />
        <PassphraseField label="New passphrase again" value={again} onChange={setAgain} autoComplete="new-password" />
      </div>
      {isMistyped && <p role="status">The two are not the same yet.</p>}
      <Told error={change.error} />
      {change.isSuccess && <p role="status">The passphrase was changed.</p>}
      <p>
        <button type="submit" className={button.act} disabled={change.isPending || next === '' || next !== again}>
          {hasPassphrase ? 'Change the passphrase' : 'Set the passphrase'}
        </button>
      </p>
    </form>
  );
}

function IdleMinutes({ minutes }: { readonly minutes: number }) {
  const [typed, setTyped] = useState(String(minutes));
  const keep = useMutation({
    mutationFn: () => answer(api.clients.lock.idle.$put({ json: { minutes: Number(typed) } })),
    onSuccess: status => thePresence().learn(status),
  });
  return (
    <form
      className={layout.stack}
      onSubmit={event => {
        event.preventDefault();
        keep.mutate();
      }}
    >
      <div className={layout.formgrid}>
        <label className={layout.field}>
          <span>Lock after so many minutes without a key or a pointer (1 to 120)</span>
          <input type="number" required min={1} max={120} step={1} value={typed} onChange={event => setTyped(event.target.value)} />
        </label>
      </div>
      <Told error={keep.error} />
      <p className={layout.row}>
        <button type="submit" className={button.quiet} disabled={keep.isPending}>
          Keep the minutes
        </button>
        <span role="status">{keep.isSuccess && typed === String(minutes) ? 'Kept.' : ''}</span>
      </p>
    </form>
  );
}
