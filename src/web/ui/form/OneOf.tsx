import { useId } from 'react';
import layout from '../layout.module.css';
import text from '../text.module.css';
import type { Choices } from './choices.ts';
import { FieldNote } from './FieldNote.tsx';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

/** One of a few, all of them in sight. */
export function OneOf<Key extends string>(
  given: Bound<Key> & {
    readonly label: string;
    readonly choices: Choices<Key>;
    readonly hint?: string;
    /** The choices say it all to who sees them. */
    readonly isLabelUnseen?: boolean;
  },
) {
  const { label, choices, value, onChange, hint, wrong, isLabelUnseen = false } = given;
  const name = useId();
  return (
    <fieldset className={layout.choice} aria-describedby={hint || wrong ? `${name}-note` : undefined}>
      <legend className={isLabelUnseen ? text.unseen : undefined}>{label}</legend>
      <div className={layout.row}>
        {choices.map(([key, words]) => (
          <label className={styles.tick} key={key}>
            <input type="radio" name={name} checked={value === key} onChange={() => onChange(key)} />
            <span>{words}</span>
          </label>
        ))}
      </div>
      <FieldNote fieldId={name} hint={hint} wrong={wrong} />
    </fieldset>
  );
}
