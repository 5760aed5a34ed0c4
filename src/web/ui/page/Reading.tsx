import { useEffect, useState } from 'react';
import styles from './Reading.module.css';

const longMilliseconds = 6_000;

/** Stands where something will be, while it is read; says so when it takes long. */
export function Reading() {
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLong(true), longMilliseconds);
    return () => clearTimeout(timer);
  }, []);
  return (
    <div className={styles.reading} role="status">
      <span>{isLong ? 'Still reading. It takes longer than usual; what you typed stays.' : 'Reading …'}</span>
      <span className={styles.bar} />
      <span className={styles.bar} />
      <span className={styles.bar} />
    </div>
  );
}
