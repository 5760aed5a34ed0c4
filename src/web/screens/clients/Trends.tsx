import type { Client } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './Trends.module.css';

type Trend = NonNullable<Client['trends']>[number];

/** Small plots of results over time, each with its figures in words for who does not see them. */
export function Trends({ trends }: { readonly trends: readonly Trend[] }) {
  if (trends.length === 0) return null;
  return (
    <div>
      <h3>Over time</h3>
      {trends.map(({ analyte, name, unit, points, bands }) => (
        <div key={analyte}>
          <span className={`${layout.spread} ${text.small}`}>
            <span>{name}</span>
            <span>
              {figure(points.at(-1)!.value)} {unit}
              <span className={text.unseen}>: {points.map(({ on, value }) => `${figure(value)} on ${on}`).join(', ')}</span>
            </span>
          </span>
          <Plot points={points} band={bands[0]?.range} />
          {bands.map(({ range, source }) => (
            <span className={text.why} key={source}>
              band {bandText(range)} {unit} ({source})
            </span>
          ))}
        </div>
      ))}
    </div>
  );
}

function Plot({ points, band }: { readonly points: Trend['points']; readonly band: readonly [number, number | null] | undefined }) {
  const values = [...points.map(({ value }) => value), ...(band ?? []).flatMap(end => (end === null || end === 0 ? [] : [end]))];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const times = points.map(({ on }) => Date.parse(on));
  const [first, last] = [times[0]!, times.at(-1)!];
  const height = (value: number): number => 34 - ((value - least) / Math.max(1e-9, most - least)) * 28;
  const at = (index: number): string =>
    `${8 + ((times[index]! - first) / Math.max(1, last - first)) * 384},${height(points[index]!.value)}`;
  return (
    <svg viewBox="0 0 400 40" className={styles.trend} aria-hidden="true">
      {band !== undefined && (
        <rect
          className={styles.band}
          x="0"
          width="400"
          y={height(band[1] ?? most)}
          height={Math.max(1, height(band[0]) - height(band[1] ?? most))}
        />
      )}
      <polyline className={styles.line} points={points.map((_, index) => at(index)).join(' ')} />
      {points.map(({ on }, index) => {
        const [x, y] = at(index).split(',');
        return <circle key={on} className={styles.printed} cx={x} cy={y} r="4" />;
      })}
    </svg>
  );
}

function bandText([lo, hi]: readonly [number, number | null]): string {
  return hi === null ? `${figure(lo)} or more` : `${figure(lo)} – ${figure(hi)}`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
