import layout from './layout.module.css';
import styles from './Trend.module.css';
import text from './text.module.css';
import { type Band, type TrendPoint, trendScale } from './trendScale.ts';

const [width, height, room] = [400, 48, 6];

/** A figure over time in a small plot, with its first and last day and the ends of its scale; who does not see it hears every figure. */
export function Trend(given: {
  readonly label: string;
  readonly unit: string;
  /** Oldest first; one at least. */
  readonly points: readonly TrendPoint[];
  readonly bands: readonly { readonly range: Band; readonly says: string }[];
}) {
  const { label, unit, points, bands } = given;
  const scale = trendScale(
    points,
    bands.map(({ range }) => range),
  );
  const x = (day: string): number => room + scale.across(day) * (width - 2 * room);
  const y = (value: number): number => height - room - scale.up(value) * (height - 2 * room);
  return (
    <div>
      <span className={`${layout.spread} ${text.small}`}>
        <span>{label}</span>
        <span>
          {figure(points.at(-1)!.value)} {unit}
          <span className={text.unseen}>: {points.map(({ day, value }) => `${figure(value)} on ${day}`).join(', ')}</span>
        </span>
      </span>
      <div className={styles.plot} aria-hidden="true">
        <svg viewBox={`0 0 ${width} ${height}`} className={styles.picture} preserveAspectRatio="none" aria-hidden="true">
          {bands.map(({ range: [least, most], says }) => {
            const top = most === null ? 0 : y(most);
            const bottom = least === 0 ? height : y(least);
            return <rect key={says} className={styles.band} x="0" width={width} y={top} height={Math.max(1, bottom - top)} />;
          })}
          <polyline className={styles.line} points={points.map(({ day, value }) => `${x(day)},${y(value)}`).join(' ')} />
          {points.map(({ day, value }) => (
            // A line without length and with round ends stays a dot, however wide the plot is drawn.
            <path key={`${day} ${value}`} className={styles.point} d={`M${x(day)},${y(value)}h0`} />
          ))}
        </svg>
        <span className={styles.values}>
          <span>{figure(scale.most)}</span>
          <span>{scale.least === scale.most ? '' : figure(scale.least)}</span>
        </span>
        <span className={styles.days}>
          <span>{points[0]!.day}</span>
          <span>{points.length === 1 ? '' : points.at(-1)!.day}</span>
        </span>
      </div>
      {bands.map(({ range, says }) => (
        <span className={text.why} key={says}>
          band {bandText(range)} {unit} ({says})
        </span>
      ))}
    </div>
  );
}

function bandText([least, most]: Band): string {
  return most === null ? `${figure(least)} or more` : `${figure(least)} – ${figure(most)}`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
