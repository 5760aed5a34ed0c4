import { useId } from 'react';
import layout from '../layout.module.css';
import text from '../text.module.css';
import type { Choices } from './choices.ts';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

/** One of a few, all of them in sight; what is wrong stands below. */
export function OneOf<Key extends string>(
  given: Bound<Key> & {
    readonly label: string;
    readonly choices: Choices<Key>;
    /** The choices say it all to who sees them. */
    readonly isLabelUnseen?: boolean;
    /** Shown, and not to be chosen now. */
    readonly impossible?: readonly Key[];
  },
) {
  const { label, choices, value, onChange, wrong, isLabelUnseen = false, impossible = [] } = given;
  const name = useId();
  return (
    <fieldset className={layout.choice} aria-describedby={wrong === undefined ? undefined : `${name}-wrong`}>
      <legend className={isLabelUnseen ? text.unseen : undefined}>{label}</legend>
      <div className={layout.row}>
        {choices.map(([key, words]) => (
          <label className={styles.tick} key={key}>
            <input type="radio" name={name} checked={value === key} disabled={impossible.includes(key)} onChange={() => onChange(key)} />
            <span>{words}</span>
          </label>
        ))}
      </div>
      {wrong !== undefined && (
        <b className={styles.wrong} id={`${name}-wrong`}>
          {wrong}
        </b>
      )}
    </fieldset>
  );
}
