import { useId } from 'react';
import layout from './layout.module.css';
import text from './text.module.css';

/** A text with its name above it; several lines where `rows` is given, what is missing or wrong below it. */
export function TextField(given: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly rows?: number;
  readonly type?: 'text' | 'date' | 'number' | 'url';
  readonly hint?: string;
  readonly wrong?: string | undefined;
}) {
  const { label, value, onChange, rows, type = 'text', hint, wrong } = given;
  const fieldId = useId();
  const noteId = useId();
  const note = [hint, wrong].filter(Boolean).join(' ');
  const shared = {
    id: fieldId,
    value,
    maxLength: 20_000,
    ...(note === '' ? {} : { 'aria-describedby': noteId }),
    ...(wrong === undefined ? {} : { 'aria-invalid': true as const }),
  };
  return (
    <div className={layout.field}>
      <label htmlFor={fieldId}>{label}</label>
      {rows === undefined ? (
        <input type={type} {...shared} onChange={event => onChange(event.target.value)} />
      ) : (
        <textarea rows={rows} {...shared} onChange={event => onChange(event.target.value)} />
      )}
      {note !== '' && (
        <span className={`${text.small} ${text.soft}`} id={noteId}>
          {hint}
          {wrong !== undefined && (
            <b>
              {hint === undefined ? '' : ' '}
              {wrong}
            </b>
          )}
        </span>
      )}
    </div>
  );
}
