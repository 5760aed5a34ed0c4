import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { DeleteEarlierCopies } from '../data/DeleteEarlierCopies.tsx';
import { noPassphrases, useIdleActions, useLockNow, usePassphraseActions } from './lockActions.ts';
import { PassphraseField } from './PassphraseField.tsx';
import { TakeOffPassphrase } from './TakeOffPassphrase.tsx';

/** Open: the passphrase is set, changed or taken off, and when it locks by itself. */
export function LockSettings({ hasPassphrase, idleMinutes }: { readonly hasPassphrase: boolean; readonly idleMinutes: number }) {
  const { lock, fault } = useLockNow();
  useOffered(hasPassphrase ? [lock] : []);
  return (
    <section className={`${layout.sheet} ${layout.stack} ${layout.noprint}`} aria-label="The lock of client data">
      {hasPassphrase && (
        <p className={layout.row}>
          <ActionButton action={lock} isMain />
          <span className={`${text.small} ${text.soft}`}>
            It locks by itself when the last window is closed, when nobody types or points for {idleMinutes} min, and when the program ends.
          </span>
        </p>
      )}
      <Told error={fault} />
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
  const typed = useTyped(noPassphrases);
  const { change, isChanged, fault } = usePassphraseActions(hasPassphrase, typed);
  const { next, again } = typed.values;
  return (
    <ActionForm action={change} className={layout.stack} isOffered={false}>
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
        {hasPassphrase && <PassphraseField label="Passphrase now" autoComplete="current-password" {...typed.field('current')} />}
        <PassphraseField label="New passphrase, 15 characters or more" autoComplete="new-password" {...typed.field('next')} />
        <PassphraseField label="New passphrase again" autoComplete="new-password" {...typed.field('again')} />
      </div>
      {again !== '' && again !== next && <p role="status">The two are not the same yet.</p>}
      <Told error={fault} />
      {isChanged && <p role="status">The passphrase was changed.</p>}
      <p>
        <ActionButton action={change} isMain submits />
      </p>
    </ActionForm>
  );
}

function IdleMinutes({ minutes }: { readonly minutes: number }) {
  const typed = useTyped({ minutes: String(minutes) });
  const { keep, isKept, fault } = useIdleActions(typed.values);
  return (
    <ActionForm action={keep} className={layout.stack} isOffered={false}>
      <div className={layout.formgrid}>
        <Field
          label="Lock after so many minutes without a key or a pointer (1 to 120)"
          type="number"
          isRequired
          min="1"
          max="120"
          {...typed.field('minutes')}
        />
      </div>
      <Told error={fault} />
      <p className={layout.row}>
        <ActionButton action={keep} submits />
        <span role="status">{isKept && typed.values.minutes === String(minutes) ? 'Kept.' : ''}</span>
      </p>
    </ActionForm>
  );
}
