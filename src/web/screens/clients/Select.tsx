import layout from '../../ui/layout.module.css';
import { type Choices, oneOf } from './vocabulary.ts';

/** One of a closed list, with its label. */
export function Select<Key extends string>({
  label,
  value,
  choices,
  onChoose,
}: {
  readonly label: string;
  readonly value: Key;
  readonly choices: Choices<Key>;
  readonly onChoose: (key: Key) => void;
}) {
  return (
    <label className={layout.field}>
      <span>{label}</span>
      <select
        value={value}
        onChange={event => {
          const chosen = oneOf(
            choices.map(([key]) => key),
            event.target.value,
          );
          if (chosen !== undefined) onChoose(chosen);
        }}
      >
        {choices.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
