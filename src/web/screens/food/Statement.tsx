import type { Label } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import look from '../../ui/text.module.css';
import styles from './Statement.module.css';
import { statementPieces } from './statementPieces.ts';

/** The ingredient statement with every additive marked where it stands, and explained below. */
export function Statement({ label }: { readonly label: Label }) {
  const text = label.printed.statement;
  if (typeof text !== 'string' || !label.read.statementRead) {
    return (
      <section className={layout.sheet} aria-labelledby="statement-title">
        <h2 id="statement-title">Ingredients</h2>
        <p>No statement was read: which additives are in it is unknown.</p>
      </section>
    );
  }
  const counted = label.read.additives.filter(
    ({ class: kind, counts, certainty }) => kind !== 'sodium' && (counts || certainty === 'possible'),
  );
  return (
    <section className={layout.sheet} aria-labelledby="statement-title">
      <h2 id="statement-title">Ingredients</h2>
      <p className={styles.statement}>
        {statementPieces(text, label.read.additives).map(({ start, words, mark, title }) =>
          mark === undefined ? (
            <span key={start}>{words}</span>
          ) : (
            <mark key={start} className={styles[mark]} title={title}>
              {words}
            </mark>
          ),
        )}
      </p>
      <p className={`${look.small} ${look.soft}`}>
        Underlined: phosphate that counts (one line), potassium that counts (two lines), reported and not counted (dotted).
      </p>
      {counted.length === 0 ? (
        <p>No phosphate and no potassium additive is named on the label. That is no proof: processing aids need not be listed.</p>
      ) : null}
      <ul>
        {label.read.additives.map(({ class: kind, id, start, why, counts }) => (
          <li key={`${kind}${id}${start}`} className={counts ? undefined : look.soft}>
            <span className={look.tag}>{kind}</span> {why}
          </li>
        ))}
      </ul>
    </section>
  );
}
