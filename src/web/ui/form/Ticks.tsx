import layout from '../layout.module.css';
import type { Choices } from './choices.ts';
import styles from './field.module.css';
import type { Bound } from './typed.ts';

/** Yes or no. */
export function Tick(
  given: Bound<boolean> & {
    readonly label: string;
    /** The whole of it, where the label alone leaves out of what; begins with the label. */
    readonly about?: string;
    readonly isRequired?: boolean;
    readonly isDisabled?: boolean;
  },
) {
  const { label, about, value, onChange, isRequired, isDisabled } = given;
  return (
    <label className={styles.tick}>
      <input
        type="checkbox"
        checked={value}
        required={isRequired}
        disabled={isDisabled}
        aria-label={about}
        onChange={event => onChange(event.target.checked)}
      />
      <span>{label}</span>
    </label>
  );
}

/** Any of a closed list, in the order in which they were ticked. */
export function Ticks<Key extends string>(
  given: Bound<readonly Key[]> & { readonly label: string; readonly choices: Choices<Key>; readonly empty?: string },
) {
  const { label, choices, value, onChange, empty } = given;
  return (
    <fieldset>
      <legend>{label}</legend>
      {choices.length === 0 && empty !== undefined && <p>{empty}</p>}
      <div className={layout.ticks}>
        {choices.map(([key, words]) => (
          <Tick
            key={key}
            label={words}
            value={value.includes(key)}
            onChange={isTicked => onChange(isTicked ? [...value, key] : value.filter(one => one !== key))}
          />
        ))}
      </div>
    </fieldset>
  );
}
