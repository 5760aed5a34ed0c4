import { type FieldWords, LabelledField } from '../LabelledField.tsx';
import type { Choices } from './choices.ts';
import type { Bound } from './typed.ts';

/**
 * One of a closed list; `orNone` puts what stands for no choice before it. What is kept and no longer in the list is shown by `gone`, until
 * another one is chosen.
 */
export function Choice<Key extends string>({
  value,
  onChange,
  choices,
  gone,
  ...words
}: Bound<Key> & FieldWords & { readonly choices: Choices<Key>; readonly gone?: string }) {
  const isGone = !choices.some(([key]) => key === value);
  return (
    <LabelledField {...words}>
      {marks => (
        <select
          {...marks}
          value={value}
          onChange={event => {
            const chosen = choices.find(([key]) => key === event.target.value);
            if (chosen !== undefined) onChange(chosen[0]);
          }}
        >
          {isGone && <option value={value}>{gone ?? value}</option>}
          {choices.map(([key, name]) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      )}
    </LabelledField>
  );
}
