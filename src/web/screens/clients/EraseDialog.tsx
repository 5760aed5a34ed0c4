import { type ReactNode, useState } from 'react';
import look from '../../ui/Button.module.css';
import { Dialog } from '../../ui/Dialog.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { HeldInCopies } from './HeldInCopies.tsx';
import { PassphraseField } from './PassphraseField.tsx';

/** Asks before client data is erased: says what goes, and waits until `word` is typed, and the passphrase where it is asked for. Escape and Cancel leave everything as it is. */
export function EraseDialog({
  title,
  word,
  button,
  asksPassphrase = false,
  children,
  onErase,
  onClose,
}: {
  readonly title: string;
  readonly word: string;
  readonly button: string;
  readonly asksPassphrase?: boolean;
  readonly children: ReactNode;
  readonly onErase: (passphrase: string) => Promise<unknown>;
  readonly onClose: () => void;
}) {
  const [typed, setTyped] = useState('');
  const [passphrase, setPassphrase] = useState('');
  const isReady = typed.trim() === word && (!asksPassphrase || passphrase !== '');
  const [error, setError] = useState<unknown>();
  return (
    <Dialog
      title={title}
      onClose={onClose}
      onSubmit={() => {
        if (!isReady) return;
        setError(undefined);
        onErase(passphrase).then(onClose, setError);
      }}
      buttons={
        <>
          <button type="submit" className={look.act} disabled={!isReady}>
            {button}
          </button>
          <button type="button" className={look.quiet} onClick={onClose}>
            Cancel
          </button>
        </>
      }
    >
      {children}
      <HeldInCopies />
      <label className={layout.field}>
        <span>To erase, type: {word}</span>
        <input type="text" value={typed} onChange={event => setTyped(event.target.value)} autoComplete="off" />
      </label>
      {asksPassphrase && (
        <PassphraseField label="The passphrase" value={passphrase} onChange={setPassphrase} autoComplete="current-password" />
      )}
      <Told error={error} />
    </Dialog>
  );
}
