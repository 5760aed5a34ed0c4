import { type FieldWords, LabelledField } from '../LabelledField.tsx';
import text from '../text.module.css';
import type { Choices } from './choices.ts';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

/** A figure as it is typed, and the unit that was chosen for it. */
export interface TypedFigure {
  readonly text: string;
  readonly unit: string;
}

/** A figure with its unit beside it: to be chosen where there are several. It stays the text that was typed. */
export function Figure({
  value,
  onChange,
  units,
  placeholder,
  takesWords = false,
  ...words
}: Bound<TypedFigure> &
  FieldWords & {
    readonly units: Choices<string>;
    readonly placeholder?: string;
    /** True where words are typed as well: "5 ft 9 in". */
    readonly takesWords?: boolean;
  }) {
  return (
    <LabelledField {...words}>
      {marks => (
        <div className={styles.figure}>
          <input
            {...marks}
            type="text"
            inputMode={takesWords ? 'text' : 'decimal'}
            autoComplete="off"
            maxLength={20}
            value={value.text}
            placeholder={placeholder}
            onChange={event => onChange({ ...value, text: event.target.value })}
          />
          {units.length > 1 ? (
            <select
              aria-label={`Unit of ${words.label}`}
              value={value.unit}
              onChange={event => onChange({ ...value, unit: event.target.value })}
            >
              {units.map(([key, name]) => (
                <option key={key} value={key}>
                  {name}
                </option>
              ))}
            </select>
          ) : (
            <span className={text.soft}>{units[0]?.[1]}</span>
          )}
        </div>
      )}
    </LabelledField>
  );
}
