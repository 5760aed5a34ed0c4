import type { ReactNode } from 'react';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import { Told } from '../../ui/Told.tsx';
import { useEraseActions } from './actions.ts';
import { HeldInCopies } from './HeldInCopies.tsx';
import { PassphraseField } from './PassphraseField.tsx';

/** Asks before client data is erased: says what goes, and waits until `word` is typed, and the passphrase where it is asked for. Escape and Cancel leave everything as it is. */
export function EraseDialog(given: {
  readonly title: string;
  readonly word: string;
  /** On the button that erases. */
  readonly label: string;
  readonly asksPassphrase?: boolean;
  readonly children: ReactNode;
  readonly erase: (passphrase: string) => Promise<unknown>;
  readonly onClose: () => void;
}) {
  const { title, word, asksPassphrase = false, children, onClose } = given;
  const typed = useTyped({ word: '', passphrase: '' });
  const { erase, cancel, fault } = useEraseActions(given, typed.values);
  return (
    <Dialog
      title={title}
      action={erase}
      onClose={onClose}
      buttons={
        <>
          <ActionButton action={erase} isMain submits />
          <ActionButton action={cancel} />
        </>
      }
    >
      {children}
      <HeldInCopies />
      <Field label={`To erase, type: ${word}`} {...typed.field('word')} />
      {asksPassphrase && <PassphraseField label="The passphrase" autoComplete="current-password" {...typed.field('passphrase')} />}
      <Told error={fault} />
    </Dialog>
  );
}
