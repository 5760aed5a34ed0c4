import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { LockStatus } from '../../../server/clientDoor.ts';
import { answer, api } from '../../api.ts';
import { thePresence } from '../../lock/lockPresence.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { EraseDialog } from './EraseDialog.tsx';
import { PassphraseField } from './PassphraseField.tsx';

/** Locked: the passphrase opens, and erasing everything asks for it too. */
export function LockedDoor({ status, onOpen }: { readonly status: LockStatus; readonly onOpen: () => Promise<void> }) {
  const { waitSeconds, wasIdle, idleMinutes } = status;
  const [passphrase, setPassphrase] = useState('');
  const [isErasing, setErasing] = useState(false);
  const open = useMutation({
    mutationFn: () => answer(api.clients.lock.$post({ json: { open: true, passphrase } })),
    onSuccess: status => {
      setPassphrase('');
      thePresence().learn(status);
      return onOpen();
    },
  });
  return (
    <>
      <form
        className={`${layout.sheet} ${layout.stack}`}
        onSubmit={event => {
          event.preventDefault();
          open.mutate();
        }}
      >
        <h2>Client data is locked</h2>
        {wasIdle && <p>Nobody typed or pointed for {idleMinutes} min.</p>}
        <PassphraseField label="Passphrase" value={passphrase} onChange={setPassphrase} autoComplete="current-password" />
        {open.isPending && waitSeconds > 0 && (
          <p role="status">After wrong tries the next one waits: it is looked at in about {waitSeconds} seconds.</p>
        )}
        <Told error={open.error} />
        <p className={layout.row}>
          <button type="submit" className={button.act} disabled={open.isPending}>
            Open
          </button>
          <button type="button" className={button.quiet} onClick={() => setErasing(true)}>
            Erase every client
          </button>
        </p>
      </form>
      {isErasing && (
        <EraseDialog
          title="Erase every client?"
          word="erase every client"
          button="Erase every client"
          asksPassphrase
          onErase={async given => {
            await answer(api.clients.$delete({ json: { confirm: 'erase every client', passphrase: given } }));
            await onOpen();
          }}
          onClose={() => setErasing(false)}
        >
          <p>
            All clients go for good: assessments, results, signed prescriptions, who was told, handouts, and the passphrase. Nothing brings
            it back. Who has lost the passphrase erases on the command line: platewright clients erase-all.
          </p>
        </EraseDialog>
      )}
    </>
  );
}
