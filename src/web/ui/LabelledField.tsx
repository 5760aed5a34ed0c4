import { type ReactNode, useId } from 'react';
import styles from './LabelledField.module.css';

/** What the field itself must carry, so that its name and what is said about it are heard. */
export interface FieldMarks {
  readonly id: string;
  readonly required: boolean;
  readonly disabled: boolean;
  readonly 'aria-describedby'?: string;
  readonly 'aria-invalid'?: true;
}

/** What every field says around itself. */
export interface FieldWords {
  readonly label: string;
  /** Stands behind the label, lighter: "may be left out". */
  readonly aside?: string;
  readonly hint?: string;
  readonly wrong?: string | undefined;
  readonly isRequired?: boolean;
  readonly isDisabled?: boolean;
}

/** A field with its name above it, how to fill it in and what is wrong below it. */
export function LabelledField({
  label,
  aside,
  hint,
  wrong,
  isRequired = false,
  isDisabled = false,
  children,
}: FieldWords & { readonly children: (marks: FieldMarks) => ReactNode }) {
  const fieldId = useId();
  const hintId = useId();
  const wrongId = useId();
  const about = [hint === undefined ? '' : hintId, wrong === undefined ? '' : wrongId].filter(id => id !== '').join(' ');
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={fieldId}>
        {label}
        {isRequired && <span className={styles.needed}> (needed)</span>}
        {aside !== undefined && <span className={styles.needed}> ({aside})</span>}
      </label>
      {children({
        id: fieldId,
        required: isRequired,
        disabled: isDisabled,
        ...(about === '' ? {} : { 'aria-describedby': about }),
        ...(wrong === undefined ? {} : { 'aria-invalid': true as const }),
      })}
      {hint !== undefined && (
        <span className={styles.hint} id={hintId}>
          {hint}
        </span>
      )}
      {wrong !== undefined && (
        <span className={styles.wrong} id={wrongId}>
          {wrong}
        </span>
      )}
    </div>
  );
}
