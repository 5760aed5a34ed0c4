import styles from './Trend.module.css';
import text from './text.module.css';
import { type Band, type TrendPoint, trendScale } from './trendScale.ts';

const [width, height, room] = [160, 36, 6];

/**
 * One figure as a line: its newest value with a mark where it is out of its band, what is said about it, and a small plot over time. It opens
 * every value with its day, and where each band comes from.
 */
export function Trend(given: {
  readonly label: string;
  /** The newest one, as it is told. */
  readonly shown: string;
  readonly note: string;
  readonly out?: 'above' | 'below';
  readonly unit: string;
  /** Oldest first; one at least. */
  readonly points: readonly TrendPoint[];
  readonly bands: readonly { readonly range: Band; readonly says: string }[];
  /** What stands beside the values once it is open. */
  readonly also?: string;
}) {
  const { label, shown, note, out, unit, points, bands, also } = given;
  return (
    <details className={styles.trend}>
      <summary>
        <span>
          {label} <span className={out === undefined ? styles.shown : styles.out}>{shown}</span>
          {out !== undefined && (
            <>
              <b aria-hidden="true"> {out === 'above' ? '▲' : '▼'}</b>
              <span className={text.unseen}> {out} its band</span>
            </>
          )}
          <span className={text.why}>{note}</span>
        </span>
        <Plot points={points} bands={bands.map(({ range }) => range)} isOut={out !== undefined} />
      </summary>
      <div className={`${styles.opened} ${text.small}`}>
        {also !== undefined && <p>{also}</p>}
        <ul>
          {points.toReversed().map(({ day, value }) => (
            <li key={`${day} ${value}`}>
              {figure(value)} {unit} on {day}
            </li>
          ))}
        </ul>
        {bands.map(({ range, says }) => (
          <span className={text.why} key={says}>
            band {bandText(range)} {unit} ({says})
          </span>
        ))}
      </div>
    </details>
  );
}

/** Each band with its edges, the line, the newest value larger: filled where it is out of its band. */
function Plot({
  points,
  bands,
  isOut,
}: {
  readonly points: readonly TrendPoint[];
  readonly bands: readonly Band[];
  readonly isOut: boolean;
}) {
  const scale = trendScale(points, bands);
  const x = (day: string): number => room + scale.across(day) * (width - 2 * room);
  const y = (value: number): number => height - room - scale.up(value) * (height - 2 * room);
  const newest = points.at(-1)!;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} className={styles.plot} aria-hidden="true">
      {bands.slice(0, 1).map(([least, most]) => {
        const top = most === null ? 0 : y(most);
        const bottom = least === 0 ? height : y(least);
        return (
          <g key={least}>
            <rect className={styles.band} x="0" width={width} y={top} height={Math.max(1, bottom - top)} />
            {most !== null && <line className={styles.edge} x1="0" x2={width} y1={top} y2={top} />}
            {least !== 0 && <line className={styles.edge} x1="0" x2={width} y1={bottom} y2={bottom} />}
          </g>
        );
      })}
      <polyline className={styles.line} points={points.map(({ day, value }) => `${x(day)},${y(value)}`).join(' ')} />
      {points.slice(0, -1).map(({ day, value }) => (
        <circle key={`${day} ${value}`} className={styles.point} cx={x(day)} cy={y(value)} r="1.7" />
      ))}
      <circle className={isOut ? styles.newestOut : styles.newest} cx={x(newest.day)} cy={y(newest.value)} r="4" />
    </svg>
  );
}

export function bandText([least, most]: Band): string {
  return most === null ? `${figure(least)} or more` : least === 0 ? `${figure(most)} or less` : `${figure(least)} – ${figure(most)}`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
