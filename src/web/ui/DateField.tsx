import { useState } from 'react';
import styles from './DateField.module.css';
import { type FieldWords, LabelledField } from './LabelledField.tsx';

/** A day as YYYY-MM-DD, typed or picked; '' while there is none. A day that is only begun is told, for it counts as none. */
export function DateField({
  value,
  onChange,
  ...words
}: FieldWords & { readonly value: string; readonly onChange: (day: string) => void }) {
  const [isBegun, setBegun] = useState(false);
  const wrong = isBegun ? 'Give day, month and year, or empty the field.' : words.wrong;
  return (
    <LabelledField {...words} wrong={wrong}>
      {marks => (
        <input
          {...marks}
          type="date"
          className={styles.date}
          // Without it a browser takes years of six digits.
          max="9999-12-31"
          value={value}
          onChange={event => {
            setBegun(false);
            onChange(event.target.value);
          }}
          onBlur={event => setBegun(event.target.validity.badInput)}
        />
      )}
    </LabelledField>
  );
}
