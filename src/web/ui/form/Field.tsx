import { type HTMLInputAutoCompleteAttribute, type HTMLInputTypeAttribute, useId } from 'react';
import { FieldNote, noteProps } from './FieldNote.tsx';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

type InputType = Extract<HTMLInputTypeAttribute, 'text' | 'number' | 'date' | 'time' | 'url' | 'search' | 'password'>;

/**
 * What is typed, with its name above it and what it is for, or what is wrong with it, below. Several lines where `rows` is given. A number
 * stays the text that was typed: the form reads it when it is sent.
 */
export function Field(
  given: Bound<string> & {
    readonly label: string;
    readonly type?: InputType;
    readonly rows?: number;
    readonly hint?: string;
    readonly placeholder?: string;
    readonly isRequired?: boolean;
    readonly isDisabled?: boolean;
    readonly maxLength?: number;
    readonly min?: string;
    readonly max?: string;
    readonly autoComplete?: HTMLInputAutoCompleteAttribute;
  },
) {
  const {
    label,
    value,
    onChange,
    wrong,
    type = 'text',
    rows,
    hint,
    placeholder,
    maxLength = 20_000,
    min,
    max,
    autoComplete = 'off',
  } = given;
  const id = useId();
  const shared = {
    id,
    value,
    maxLength,
    required: given.isRequired,
    disabled: given.isDisabled,
    autoComplete,
    placeholder,
    ...noteProps(id, hint, wrong),
  };
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      {rows === undefined ? (
        <input
          type={type}
          {...shared}
          {...(type === 'number' ? { step: 'any' } : {})}
          min={min}
          max={max}
          onChange={event => onChange(event.target.value)}
        />
      ) : (
        <textarea rows={rows} {...shared} onChange={event => onChange(event.target.value)} />
      )}
      <FieldNote fieldId={id} hint={hint} wrong={wrong} />
    </div>
  );
}
