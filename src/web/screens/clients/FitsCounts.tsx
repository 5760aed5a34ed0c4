import { verdictWords } from '#core/yardstick/yardstick.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';

/** How many foods have which verdict; what is avoided has none, and is told beside them. */
export function FitsCounts({ counts }: { readonly counts: Readonly<Record<(typeof verdictWords)[number] | 'avoided', number>> }) {
  return (
    <p className={layout.row}>
      {verdictWords.map(word => (
        <span key={word}>
          {counts[word]} <VerdictMark word={word} />
        </span>
      ))}
      {counts.avoided > 0 && (
        <span>
          {counts.avoided} <span className={text.tag}>avoided</span>
        </span>
      )}
    </p>
  );
}
