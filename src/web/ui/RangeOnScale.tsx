import { useId } from 'react';
import styles from './RangeOnScale.module.css';
import { ticksTo } from './scale.ts';

/** What lies between a lower and an upper end; without an upper end it goes on. */
export interface ShownRange {
  readonly from: number;
  readonly to: number | null;
  readonly kind: 'exact' | 'computed' | 'estimated';
  /** Of an estimate: the span in which it mostly lies, and where most likely. */
  readonly likely?: { readonly from: number; readonly at: number; readonly to: number };
}

/** How much of the scale lies beyond the range, so that its width and its distance from zero are seen. */
const room = 1.3;
/** A range without width is seen too. */
const leastPercent = 0.75;

/**
 * A name, its range as a bar on a scale from zero, and the same in words, for who does not see the bar. A range that is not known has no bar.
 */
export function RangeOnScale({
  name,
  unit,
  range,
  words,
}: {
  readonly name: string;
  readonly unit: string;
  readonly range: ShownRange | undefined;
  readonly words: string;
}) {
  return (
    <div className={styles.range}>
      <span>{name}</span>
      {range !== undefined && <Drawn range={range} unit={unit} />}
      <span className={styles.words}>{words}</span>
    </div>
  );
}

function Drawn({ range: { from, to, kind, likely }, unit }: { readonly range: ShownRange; readonly unit: string }) {
  const hatch = useId();
  const ticks = ticksTo((to ?? from * 2) * room, 4);
  const end = ticks.at(-1)!;
  const at = (figure: number): string => `${(figure / end) * 100}%`;
  const width = `${Math.max(leastPercent, (((to ?? end) - from) / end) * 100)}%`;
  return (
    <svg aria-hidden="true">
      <line className={styles.axis} x1="0" x2="100%" y1="17" y2="17" />
      {ticks.map(tick => (
        <line key={tick} className={styles.axis} x1={at(tick)} x2={at(tick)} y1="17" y2="21" />
      ))}
      <text x="0" y="32">
        0
      </text>
      <text x="100%" y="32" textAnchor="end">
        {end} {unit}
      </text>
      {kind === 'estimated' ? (
        <>
          <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line className={styles.hatch} x1="0" y1="0" x2="0" y2="6" />
          </pattern>
          <rect className={styles.estimated} fill={`url(#${hatch})`} x={at(from)} y="2" width={width} height="12" />
        </>
      ) : (
        <rect className={styles[kind]} x={at(from)} y="2" width={width} height="12" />
      )}
      {to === null && (
        // The arrow beyond the end of the scale: how far it goes on is not known.
        <svg x="100%" y="0" overflow="visible" aria-hidden="true">
          <path className={styles.open} d="M0 0 L8 8 L0 16 Z" />
        </svg>
      )}
      {likely !== undefined && (
        <>
          <line className={styles.likelyspan} x1={at(likely.from)} x2={at(likely.to)} y1="8" y2="8" />
          <line className={styles.likely} x1={at(likely.at)} x2={at(likely.at)} y1="0" y2="16" />
        </>
      )}
    </svg>
  );
}
