import { useState } from 'react';
import type { Client } from '../../api.ts';
import { Tick } from '../../ui/form/Ticks.tsx';
import layout from '../../ui/layout.module.css';
import { bandText, Trend } from '../../ui/Trend.tsx';
import text from '../../ui/text.module.css';
import styles from './Client.module.css';

type Result = NonNullable<Client['results']>[number];

/** Results and weights, a line each with its age, its band and how it went; as they were entered, in the other unit where that is wished. */
export function Results({ client }: { readonly client: Client }) {
  const { results = [], weights = [] } = client;
  const [inOther, setInOther] = useState(false);
  const told = [...results].sort((a, b) => rank(a) - rank(b));
  return (
    <section className={styles.section} aria-labelledby="results-title">
      <header className={layout.spread}>
        <h2 id="results-title">Results</h2>
        <span className={`${text.small} ${text.soft}`}>band: target</span>
      </header>
      {results.some(({ other }) => other !== undefined) && (
        <div className={layout.noprint}>
          <Tick label="in the other unit" value={inOther} onChange={setInOther} />
        </div>
      )}
      {results.length + weights.length === 0 && <p>No result on record.</p>}
      <div className={styles.trends}>
        {told.map(result => (
          <Trend
            key={result.analyte}
            label={result.heading}
            shown={inOther ? (result.other ?? result.shown) : result.shown}
            note={noteOf(result)}
            {...(result.out === undefined ? {} : { out: result.out })}
            unit={result.unit}
            points={result.points.map(({ on, value }) => ({ day: on, value }))}
            bands={result.bands.map(({ range, source }) => ({ range, says: source }))}
            {...(result.other === undefined ? {} : { also: `${result.shown} is ${result.other}.` })}
          />
        ))}
        {weights.map(({ kind, heading, shown, age, points }) => (
          <Trend
            key={kind}
            label={heading}
            shown={shown}
            note={ageText(age)}
            unit="kg"
            points={points.map(({ on, value }) => ({ day: on, value }))}
            bands={[]}
          />
        ))}
      </div>
    </section>
  );
}

/** What counts stands before what is too old, in the order of the table of results. */
function rank({ isTooOld }: Result): number {
  return isTooOld ? 1 : 0;
}

function noteOf({ bands, unit, age, marks, isTooOld }: Result): string {
  const [band] = bands;
  return [
    ...(band === undefined ? [] : [`${bandText(band.range)} ${unit}`]),
    ...marks,
    `${ageText(age)}${isTooOld ? ', too old to count' : ''}`,
  ].join(' · ');
}

function ageText(days: number): string {
  return days === 0 ? 'today' : days === 1 ? '1 day old' : `${days} days old`;
}
