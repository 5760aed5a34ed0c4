import { useId } from 'react';
import layout from '../layout.module.css';
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
    /** Shown, and not to be chosen now. */
    readonly impossible?: readonly Key[];
  },
) {
  const { label, choices, value, onChange, hint, wrong, impossible = [] } = given;
  const name = useId();
  return (
    <fieldset className={layout.choice} aria-describedby={hint || wrong ? `${name}-note` : undefined}>
      <legend>{label}</legend>
      <div className={layout.row}>
        {choices.map(([key, words]) => (
          <label className={styles.tick} key={key}>
            <input type="radio" name={name} checked={value === key} disabled={impossible.includes(key)} onChange={() => onChange(key)} />
            <span>{words}</span>
          </label>
        ))}
      </div>
      <FieldNote fieldId={name} hint={hint} wrong={wrong} />
    </fieldset>
  );
}
