import type { ReactNode } from 'react';
import styles from './Counts.module.css';

/** Counts side by side, each as wide as it is big; one that is pressed is what alone is shown, until it is pressed again. */
export function Counts<Key extends string>({
  label,
  parts,
  value,
  onChange,
}: {
  readonly label: string;
  /** `look` is the class of its colors. */
  readonly parts: readonly { readonly key: Key; readonly count: number; readonly words: ReactNode; readonly look: string | undefined }[];
  readonly value: string | undefined;
  readonly onChange: (value: Key | undefined) => void;
}) {
  return (
    <ul className={styles.bar} aria-label={label}>
      {parts.map(({ key, count, words, look }) => (
        <li key={key} ref={node => void node?.style.setProperty('flex', `${Math.max(1, count)} 1 auto`)}>
          <button type="button" className={look} aria-pressed={value === key} onClick={() => onChange(value === key ? undefined : key)}>
            {words} {count}
          </button>
        </li>
      ))}
    </ul>
  );
}
