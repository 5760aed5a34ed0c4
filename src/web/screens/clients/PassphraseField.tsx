import { useState } from 'react';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { Bound } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';

/** A passphrase that is typed or pasted; it can be looked at. */
export function PassphraseField(
  given: Bound<string> & { readonly label: string; readonly autoComplete: 'current-password' | 'new-password' },
) {
  const [isShown, setShown] = useState(false);
  return (
    <div className={layout.stack}>
      <Field {...given} type={isShown ? 'text' : 'password'} isSecret maxLength={1_000} />
      <Tick label="Show it" about={`Show it (${given.label})`} value={isShown} onChange={setShown} />
    </div>
  );
}
