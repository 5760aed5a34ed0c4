import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import { thePresence } from '../../lock/lockPresence.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { PassphraseField } from './PassphraseField.tsx';

/** Asked apart and plainly: what was left empty never takes it off. */
export function TakeOffPassphrase() {
  const [isAsked, setAsked] = useState(false);
  const [current, setCurrent] = useState('');
  const take = useMutation({
    mutationFn: () => answer(api.clients.passphrase.$put({ json: { current, confirm: 'take the passphrase off' } })),
    onSuccess: status => thePresence().learn(status),
  });
  if (!isAsked) {
    return (
      <p>
        <button type="button" className={button.quiet} onClick={() => setAsked(true)}>
          Take the passphrase off …
        </button>
      </p>
    );
  }
  return (
    <form
      className={`${layout.stack} ${layout.notice}`}
      onSubmit={event => {
        event.preventDefault();
        take.mutate();
      }}
    >
      <p>
        <b>Take the passphrase off?</b> Anyone using this computer account can then read client data.
      </p>
      <div className={layout.formgrid}>
        <PassphraseField label="Passphrase now, to take it off" value={current} onChange={setCurrent} autoComplete="current-password" />
      </div>
      <Told error={take.error} />
      <p className={layout.row}>
        <button type="submit" className={button.act} disabled={take.isPending || current === ''}>
          Take it off
        </button>
        <button type="button" className={button.quiet} onClick={() => setAsked(false)}>
          Keep the passphrase
        </button>
      </p>
    </form>
  );
}
