import type { Choices } from './choices.ts';
import type { Bound } from './typed.ts';
import styles from './WordChoice.module.css';

/** One of a closed list, as a part of a sentence. `after` is the sign behind it: it stays on the line of its word. */
export function WordChoice<Key extends string>({
  label,
  value,
  choices,
  onChange,
  after = '',
}: Bound<Key> & { readonly label: string; readonly choices: Choices<Key>; readonly after?: string }) {
  return (
    <span className={styles.part}>
      <select
        aria-label={label}
        value={value}
        onChange={event => {
          const chosen = choices.find(([key]) => key === event.target.value);
          if (chosen !== undefined) onChange(chosen[0]);
        }}
      >
        {!choices.some(([key]) => key === value) && <option value={value}>{value}</option>}
        {choices.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
      {after}
    </span>
  );
}
