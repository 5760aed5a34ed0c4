import type { ReactNode } from 'react';
import styles from './OpenLine.module.css';

/** A line that opens what stands below it, and closes it again. */
export function OpenLine(given: {
  readonly line: ReactNode;
  readonly isOpen: boolean;
  readonly onChange: (isOpen: boolean) => void;
  readonly children: ReactNode;
}) {
  const { line, isOpen, onChange, children } = given;
  return (
    <>
      <button type="button" className={styles.line} aria-expanded={isOpen} onClick={() => onChange(!isOpen)}>
        {line}
      </button>
      {isOpen && children}
    </>
  );
}
