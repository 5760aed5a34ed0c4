import type { SurveyRow } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './AdditiveTags.module.css';

const letters = { phosphate: 'P', potassium: 'K' } as const;

/** The classes of additives that a label names: a letter, its word, and "?" where it is not certain. */
export function AdditiveTags({ classes }: { readonly classes: SurveyRow['additives'] }) {
  if (classes.length === 0) return null;
  return (
    <span className={`${layout.row} ${styles.tags}`}>
      {classes.map(({ class: kind, isCertain }) => (
        <span className={text.tag} key={kind}>
          <b>
            {letters[kind]}
            {isCertain ? '' : '?'}
          </b>{' '}
          {additiveWords({ class: kind, isCertain })}
        </span>
      ))}
    </span>
  );
}

/** "phosphate, not certain" */
export function additiveWords({ class: kind, isCertain }: SurveyRow['additives'][number]): string {
  return `${kind}${isCertain ? '' : ', not certain'}`;
}
