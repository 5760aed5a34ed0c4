import { useState } from 'react';
import type { LockStatus } from '../../../server/clientDoor.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useEraseEveryone } from './actions.ts';
import { EraseDialog } from './EraseDialog.tsx';
import { useOpenActions } from './lockActions.ts';
import { PassphraseField } from './PassphraseField.tsx';

/** Locked: the passphrase opens, and erasing everything asks for it too. */
export function LockedDoor({ status, onOpen }: { readonly status: LockStatus; readonly onOpen: () => Promise<void> }) {
  const { waitSeconds, wasIdle, idleMinutes } = status;
  const typed = useTyped({ passphrase: '' });
  const [isErasing, setErasing] = useState(false);
  const { open, isWaiting, fault } = useOpenActions(typed, onOpen);
  const { ask, erase } = useEraseEveryone(() => setErasing(true));
  return (
    <>
      <ActionForm action={open} className={`${layout.sheet} ${layout.stack}`}>
        <h2>Client data is locked</h2>
        {wasIdle && <p>Nobody typed or pointed for {idleMinutes} min.</p>}
        <PassphraseField label="Passphrase" autoComplete="current-password" {...typed.field('passphrase')} />
        {isWaiting && waitSeconds > 0 && (
          <p role="status">After wrong tries the next one waits: it is looked at in about {waitSeconds} seconds.</p>
        )}
        <Told error={fault} />
        <p className={layout.row}>
          <ActionButton action={open} isMain submits />
          <ActionButton action={ask} />
        </p>
      </ActionForm>
      {isErasing && (
        <EraseDialog
          title="Erase every client?"
          word="erase every client"
          label="Erase every client"
          asksPassphrase
          erase={erase}
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
