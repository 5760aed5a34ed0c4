import type { FormulaWorked } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './Calculators.module.css';

type Results = NonNullable<FormulaWorked['results']>;

/** The result, announced when it changes; what is still needed while there is none. */
export function Result({
  results,
  missing,
  together,
  isWrong,
  isBegun,
}: {
  readonly results: Results | null;
  readonly missing: readonly string[];
  readonly together: readonly string[];
  readonly isWrong: boolean;
  readonly isBegun: boolean;
}) {
  return (
    <section className={layout.sheet} aria-labelledby="result-title">
      <h2 id="result-title">Result</h2>
      <div role="status" className={styles.result}>
        {results === null ? (
          <p className={text.soft}>{waitingFor(missing, isWrong, isBegun)}</p>
        ) : (
          <dl>
            {results.map(({ name, label, text }, at) => (
              <div key={name} className={at === 0 ? styles.first : undefined}>
                <dt>{label}</dt>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
        )}
        {together.map(one => (
          <p key={one}>
            <b className={styles.wrong}>{one}</b>
          </p>
        ))}
      </div>
      <p className={`${text.small} ${text.soft}`}>Local protocol and clinical judgment come first.</p>
    </section>
  );
}

function waitingFor(missing: readonly string[], isWrong: boolean, isBegun: boolean): string {
  if (isWrong) return 'No result: mend what is named at its field.';
  if (!isBegun) return 'Fill in the fields, or use the example.';
  return missing.length === 0 ? '…' : `Still needed: ${missing.join('; ')}.`;
}
