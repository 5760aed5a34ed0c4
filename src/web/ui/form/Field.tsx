import { type HTMLInputAutoCompleteAttribute, type HTMLInputTypeAttribute, useState } from 'react';
import { type FieldWords, LabelledField } from '../LabelledField.tsx';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

type InputType = Extract<HTMLInputTypeAttribute, 'text' | 'number' | 'date' | 'time' | 'url' | 'search' | 'password'>;

const pressMilliseconds = 250;

const half: Partial<Record<InputType, string>> = {
  date: 'Give day, month and year, or empty the field.',
  number: 'This is no number yet: write it to its end, or empty the field.',
};

/**
 * What is typed, with its name above it and what it is for, or what is wrong with it, below. Several lines where `rows` is given. A number
 * stays the text that was typed: the form reads it when it is sent. A day is YYYY-MM-DD. What the browser cannot read as a number or a day
 * counts as none, so it is told.
 */
export function Field({
  value,
  onChange,
  type = 'text',
  rows,
  placeholder,
  maxLength = 20_000,
  min,
  // Without it a browser takes years of six digits.
  max = type === 'date' ? '9999-12-31' : undefined,
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
  const [isHalf, setHalf] = useState(false);
  return (
    <LabelledField {...words} wrong={isHalf ? half[type] : words.wrong}>
      {marks =>
        rows === undefined ? (
          <input
            {...marks}
            type={type}
            value={value}
            className={type === 'date' ? styles.day : undefined}
            maxLength={maxLength}
            placeholder={placeholder}
            autoComplete={autoComplete}
            {...(type === 'number' ? { step: 'any' } : {})}
            {...(isSecret ? { autoCapitalize: 'none', spellCheck: false } : {})}
            min={min}
            max={max}
            onChange={event => {
              setHalf(false);
              onChange(event.target.value);
            }}
            // Not before a press that took the focus has ended: what is told would move the button from under it.
            onBlur={({ target }) => setTimeout(() => setHalf(target.validity.badInput), pressMilliseconds)}
          />
        ) : (
          <textarea
            {...marks}
            dir="auto"
            rows={rows}
            value={value}
            maxLength={maxLength}
            placeholder={placeholder}
            onChange={event => onChange(event.target.value)}
          />
        )
      }
    </LabelledField>
  );
}
