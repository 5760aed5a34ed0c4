import styles from './field.module.css';

/** What stands below a field: what it is for, and what is wrong with it. */
export function FieldNote({ fieldId, hint, wrong }: { readonly fieldId: string; readonly hint?: string; readonly wrong?: string }) {
  if (!hint && !wrong) return null;
  return (
    <span className={styles.note} id={`${fieldId}-note`}>
      {hint}
      {wrong && (
        <b className={styles.wrong}>
          {hint ? ' ' : ''}
          {wrong}
        </b>
      )}
    </span>
  );
}

/** What ties a field to the note below it. */
export function noteProps(fieldId: string, hint: string | undefined, wrong: string | undefined) {
  return {
    ...(hint || wrong ? { 'aria-describedby': `${fieldId}-note` } : {}),
    ...(wrong ? { 'aria-invalid': true as const } : {}),
  };
}
