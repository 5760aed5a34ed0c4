import { LabelledField } from '../LabelledField.tsx';
import styles from './Slider.module.css';
import type { Bound } from './typed.ts';

/** A step from 0 to `last`, slid to; `words` says where it stands. */
export function Slider({
  label,
  value,
  onChange,
  last,
  words,
}: Bound<number> & { readonly label: string; readonly last: number; readonly words: string }) {
  return (
    <LabelledField label={label}>
      {marks => (
        <input
          {...marks}
          className={styles.slider}
          type="range"
          min={0}
          max={last}
          value={value}
          aria-valuetext={words}
          onChange={event => onChange(Number(event.target.value))}
        />
      )}
    </LabelledField>
  );
}
