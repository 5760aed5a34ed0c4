import { useState } from 'react';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';

/** A passphrase that is typed or pasted; it can be looked at. */
export function PassphraseField({
  label,
  value,
  onChange,
  autoComplete,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly autoComplete: 'current-password' | 'new-password';
}) {
  const [isShown, setShown] = useState(false);
  return (
    <div className={layout.stack}>
      <label className={layout.field}>
        <span>{label}</span>
        <input
          type={isShown ? 'text' : 'password'}
          value={value}
          onChange={event => onChange(event.target.value)}
          autoComplete={autoComplete}
          autoCapitalize="none"
          spellCheck={false}
          maxLength={1_000}
        />
      </label>
      <label className={`${layout.row} ${text.small}`}>
        <input type="checkbox" checked={isShown} onChange={event => setShown(event.target.checked)} />
        <span>
          Show it<span className={text.unseen}> ({label})</span>
        </span>
      </label>
    </div>
  );
}
