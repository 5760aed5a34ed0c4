import { verdictWords } from '#core/yardstick/yardstick.ts';
import type { Survey } from '../../api.ts';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { toneOf } from '../../ui/verdictLook.ts';
import styles from './Tally.module.css';

/** How many foods got which verdict; each count shows only its foods when pressed. */
export function Tally({
  counts,
  shown,
  onShow,
}: {
  readonly counts: Survey['counts'];
  readonly shown: string | undefined;
  readonly onShow: (verdict: string | undefined) => void;
}) {
  return (
    <ul className={styles.tally} aria-label="Verdicts">
      {verdictWords.map(word => (
        <li
          key={word}
          className={styles[toneOf(word)]}
          ref={node => void node?.style.setProperty('flex', `${Math.max(1, counts[word])} 1 auto`)}
        >
          <button type="button" aria-pressed={shown === word} onClick={() => onShow(shown === word ? undefined : word)}>
            <VerdictMark word={word} /> {counts[word]}
          </button>
        </li>
      ))}
    </ul>
  );
}
