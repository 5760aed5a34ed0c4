import { useState } from 'react';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useTakeOffActions } from './lockActions.ts';
import { PassphraseField } from './PassphraseField.tsx';

/** Takes the passphrase off, once it was asked for and typed. */
export function TakeOffPassphrase() {
  const [isAsked, setAsked] = useState(false);
  const typed = useTyped({ current: '' });
  const { ask, takeOff, leave, fault } = useTakeOffActions(typed.values, setAsked);
  if (!isAsked) {
    return (
      <p>
        <ActionButton action={ask} />
      </p>
    );
  }
  return (
    <ActionForm action={takeOff} className={`${layout.stack} ${layout.notice}`} isOffered={false}>
      <p>
        <b>Take the passphrase off?</b> Anyone using this computer account can then read client data.
      </p>
      <div className={layout.formgrid}>
        <PassphraseField label="Passphrase now, to take it off" autoComplete="current-password" {...typed.field('current')} />
      </div>
      <Told error={fault} />
      <p className={layout.row}>
        <ActionButton action={takeOff} isMain submits />
        <ActionButton action={leave} />
      </p>
    </ActionForm>
  );
}
