import { type VerdictWord, verdictWords } from '#core/yardstick/yardstick.ts';
import type { Survey } from '../../api.ts';
import { Counts } from '../../ui/Counts.tsx';
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
  readonly onShow: (verdict: VerdictWord | undefined) => void;
}) {
  const parts = verdictWords.map(key => ({ key, count: counts[key], words: <VerdictMark word={key} />, look: styles[toneOf(key)] }));
  return <Counts label="Verdicts" parts={parts} value={shown} onChange={onShow} />;
}
