import { useId } from 'react';
import text from '../text.module.css';
import type { Choices } from './choices.ts';
import { FieldNote, noteProps } from './FieldNote.tsx';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

/** A figure as it is typed, and the unit that was chosen for it. */
export interface TypedFigure {
  readonly text: string;
  readonly unit: string;
}

/** A figure with its unit beside it: to be chosen where there are several. It stays the text that was typed. */
export function Figure(
  given: Bound<TypedFigure> & {
    readonly label: string;
    readonly units: Choices<string>;
    /** Stands behind the label: "may be left out". */
    readonly aside?: string;
    readonly hint?: string;
    readonly placeholder?: string;
    /** True where words are typed as well: "5 ft 9 in". */
    readonly takesWords?: boolean;
  },
) {
  const { label, units, value, onChange, wrong, aside, hint, placeholder, takesWords = false } = given;
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>
        {label}
        {aside !== undefined && <span className={`${text.soft} ${styles.aside}`}> ({aside})</span>}
      </label>
      <div className={styles.figure}>
        <input
          id={id}
          type="text"
          inputMode={takesWords ? 'text' : 'decimal'}
          autoComplete="off"
          maxLength={20}
          value={value.text}
          placeholder={placeholder}
          {...noteProps(id, hint, wrong)}
          onChange={event => onChange({ ...value, text: event.target.value })}
        />
        {units.length > 1 ? (
          <select
            className={styles.unit}
            aria-label={`Unit of ${label}`}
            value={value.unit}
            onChange={event => onChange({ ...value, unit: event.target.value })}
          >
            {units.map(([key, words]) => (
              <option key={key} value={key}>
                {words}
              </option>
            ))}
          </select>
        ) : (
          <span className={text.soft}>{units[0]?.[1]}</span>
        )}
      </div>
      <FieldNote fieldId={id} hint={hint} wrong={wrong} />
    </div>
  );
}
