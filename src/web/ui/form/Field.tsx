import type { HTMLInputAutoCompleteAttribute, HTMLInputTypeAttribute } from 'react';
import { type FieldWords, LabelledField } from '../LabelledField.tsx';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

type InputType = Extract<HTMLInputTypeAttribute, 'text' | 'number' | 'date' | 'time' | 'url' | 'search' | 'password'>;

/**
 * What is typed, with its name above it and what it is for, or what is wrong with it, below. Several lines where `rows` is given. A number
 * stays the text that was typed: the form reads it when it is sent.
 */
export function Field({
  value,
  onChange,
  type = 'text',
  rows,
  placeholder,
  maxLength = 20_000,
  min,
  max,
  autoComplete = 'off',
  isSecret = false,
  ...words
}: Bound<string> &
  FieldWords & {
    readonly type?: InputType;
    readonly rows?: number;
    readonly placeholder?: string;
    readonly maxLength?: number;
    readonly min?: string;
    readonly max?: string;
    readonly autoComplete?: HTMLInputAutoCompleteAttribute;
    /** No words of a language: nothing begins with a capital, and no spelling is looked at. */
    readonly isSecret?: boolean;
  }) {
  return (
    <LabelledField {...words}>
      {marks =>
        rows === undefined ? (
          <input
            {...marks}
            type={type}
            value={value}
            className={styles.typed}
            maxLength={maxLength}
            placeholder={placeholder}
            autoComplete={autoComplete}
            {...(type === 'number' ? { step: 'any' } : {})}
            {...(isSecret ? { autoCapitalize: 'none', spellCheck: false } : {})}
            min={min}
            max={max}
            onChange={event => onChange(event.target.value)}
          />
        ) : (
          <textarea
            {...marks}
            rows={rows}
            value={value}
            className={styles.typed}
            maxLength={maxLength}
            placeholder={placeholder}
            onChange={event => onChange(event.target.value)}
          />
        )
      }
    </LabelledField>
  );
}
