import type { VerdictWord } from '#core/yardstick/yardstick.ts';
import styles from './VerdictMark.module.css';
import { toneOf } from './verdictLook.ts';

/** A verdict by word, shape and tone, never by tone alone. */
export function VerdictMark({ word }: { readonly word: VerdictWord }) {
  return (
    <span className={`${styles.verdict} ${styles[toneOf(word)]}`}>
      <svg viewBox="0 0 13 13" aria-hidden="true">
        {shapes[word]}
      </svg>
      {word}
    </span>
  );
}

const shapes: Record<VerdictWord, React.ReactNode> = {
  fits: <circle cx="6.5" cy="6.5" r="5.5" fill="currentColor" />,
  nearly: <circle cx="6.5" cy="6.5" r="4.8" fill="none" stroke="currentColor" strokeWidth="2.4" />,
  over: <rect x="1.5" y="1.5" width="10" height="10" fill="currentColor" transform="rotate(45 6.5 6.5)" />,
  "can't tell": <circle cx="6.5" cy="6.5" r="5" fill="none" stroke="currentColor" strokeWidth="1.8" strokeDasharray="2.4 2.4" />,
};
