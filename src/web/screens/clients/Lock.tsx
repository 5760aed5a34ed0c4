import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

/** The door before client data: asks for the passphrase while it is locked, and lets it be set, changed, taken off and locked. */
export function Lock({ onOpen }: { readonly onOpen: () => Promise<void> }) {
  const queries = useQueryClient();
  const [passphrase, setPassphrase] = useState('');
  const [next, setNext] = useState('');
  const lock = useQuery({ queryKey: ['lock'], queryFn: () => answer(api.clients.lock.$get()) });
  const forget = async (): Promise<void> => {
    setPassphrase('');
    setNext('');
    // What was read before the lock must not stay on the screen.
    await queries.resetQueries({ queryKey: ['client'] });
    await queries.resetQueries({ queryKey: ['clients'] });
    await queries.invalidateQueries({ queryKey: ['lock'] });
    await onOpen();
  };
  const turn = useMutation({
    mutationFn: (open: boolean) => answer(api.clients.lock.$post({ json: open ? { open, passphrase } : { open } })),
    onSuccess: forget,
  });
  const change = useMutation({
    mutationFn: () =>
      answer(
        api.clients.passphrase.$put({
          json: { ...(passphrase === '' ? {} : { current: passphrase }), ...(next === '' ? {} : { next }) },
        }),
      ),
    onSuccess: forget,
  });
  if (lock.data === undefined) return <Told error={lock.error} />;
  if (lock.data.state === 'locked') {
    return (
      <form
        className="sheet stack"
        onSubmit={event => {
          event.preventDefault();
          turn.mutate(true);
        }}
      >
        <h2>Client data is locked</h2>
        <label className="field">
          <span>Passphrase</span>
          <input type="password" value={passphrase} onChange={event => setPassphrase(event.target.value)} autoComplete="off" />
        </label>
        <Told error={turn.error} />
        <p>
          <button type="submit" className="act" disabled={turn.isPending}>
            Open
          </button>
        </p>
      </form>
    );
  }
  return (
    <details className="sheet noprint">
      <summary>
        {lock.data.hasPassphrase ? 'Locked by a passphrase when you leave' : 'Not locked: anyone at this computer can read client data'}
      </summary>
      <form
        className="stack"
        onSubmit={event => {
          event.preventDefault();
          change.mutate();
        }}
      >
        <p className="small">
          A passphrase encrypts client data on this computer. Nobody can open it without: losing the passphrase loses the data. Export
          first, and keep the export somewhere safe.
        </p>
        <div className="formgrid">
          {lock.data.hasPassphrase && (
            <label className="field">
              <span>Passphrase now</span>
              <input type="password" value={passphrase} onChange={event => setPassphrase(event.target.value)} autoComplete="off" />
            </label>
          )}
          <label className="field">
            <span>{lock.data.hasPassphrase ? 'New passphrase (empty takes it off)' : 'Passphrase, 12 characters or more'}</span>
            <input type="password" value={next} onChange={event => setNext(event.target.value)} autoComplete="off" />
          </label>
        </div>
        <Told error={change.error ?? turn.error} />
        <p className="row">
          <button type="submit" className="act" disabled={change.isPending || (!lock.data.hasPassphrase && next === '')}>
            {lock.data.hasPassphrase ? 'Change it' : 'Set the passphrase'}
          </button>
          {lock.data.hasPassphrase && (
            <button type="button" className="quiet" onClick={() => turn.mutate(false)}>
              Lock now
            </button>
          )}
        </p>
      </form>
    </details>
  );
}
