import { useId } from 'react';
import type { Choices } from './choices.ts';
import { FieldNote, noteProps } from './FieldNote.tsx';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

/**
 * One of a closed list; `orNone` puts what stands for no choice before it. What is kept and no longer in the list is shown by `gone`, until
 * another one is chosen.
 */
export function Choice<Key extends string>(
  given: Bound<Key> & {
    readonly label: string;
    readonly choices: Choices<Key>;
    readonly gone?: string;
    readonly hint?: string;
    readonly isRequired?: boolean;
    readonly isDisabled?: boolean;
  },
) {
  const { label, value, choices, gone, onChange, hint, wrong } = given;
  const id = useId();
  const isGone = !choices.some(([key]) => key === value);
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        required={given.isRequired}
        disabled={given.isDisabled}
        {...noteProps(id, hint, wrong)}
        onChange={event => {
          const chosen = choices.find(([key]) => key === event.target.value);
          if (chosen !== undefined) onChange(chosen[0]);
        }}
      >
        {isGone && <option value={value}>{gone ?? value}</option>}
        {choices.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
      <FieldNote fieldId={id} hint={hint} wrong={wrong} />
    </div>
  );
}
