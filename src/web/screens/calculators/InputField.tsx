import { useId } from 'react';
import type { Formula } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './Calculators.module.css';
import type { TypedInput } from './typedInputs.ts';

type Input = Formula['inputs'][number];

interface Given {
  readonly input: Input;
  readonly typed: TypedInput;
  readonly wrong: string | undefined;
  readonly onChange: (typed: TypedInput) => void;
}

/** One input: a figure with its unit, a choice, or yes and no. What is wrong with it is told below it. */
export function InputField(given: Given) {
  const { kind } = given.input;
  if (kind === 'figure') return <FigureField {...given} />;
  if (kind === 'choice') return <ChoiceField {...given} />;
  return <YesNo {...given} />;
}

function FigureField({ input: { label, units, required, help }, typed, wrong, onChange }: Given) {
  const id = useId();
  const unit = units.find(one => one.unit === typed.unit) ?? units[0];
  const isFeet = typed.unit === 'ft in';
  return (
    <div className={layout.field}>
      <label htmlFor={id}>
        {label}
        {!required && <span className={styles.aside}> (may be left out)</span>}
      </label>
      <div className={styles.figure}>
        <input
          id={id}
          type="text"
          inputMode={isFeet ? 'text' : 'decimal'}
          autoComplete="off"
          maxLength={20}
          value={typed.text}
          placeholder={isFeet ? '5 ft 9 in' : ''}
          aria-describedby={`${id}-note`}
          aria-invalid={wrong === undefined ? undefined : true}
          onChange={event => onChange({ ...typed, text: event.target.value })}
        />
        {units.length > 1 ? (
          <select aria-label={`Unit of ${label}`} value={typed.unit} onChange={event => onChange({ ...typed, unit: event.target.value })}>
            {units.map(one => (
              <option key={one.unit} value={one.unit}>
                {unitName(one.unit)}
              </option>
            ))}
          </select>
        ) : (
          <span className={styles.unit}>{unit?.unit}</span>
        )}
      </div>
      <span className={`${text.small} ${text.soft}`} id={`${id}-note`}>
        {wrong === undefined ? [help, unit?.possible].filter(Boolean).join('; ') : <Wrong>{wrong}</Wrong>}
      </span>
    </div>
  );
}

function unitName(unit: string): string {
  return unit === 'ft in' ? 'ft, in' : unit.replace(/^umol/, 'µmol').replace('/(24.h)', ' a day').replace('{ratio}', '');
}

function ChoiceField({ input: { label, options, required }, typed, wrong, onChange }: Given) {
  const id = useId();
  return (
    <div className={layout.field}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={typed.text}
        aria-describedby={`${id}-note`}
        aria-invalid={wrong === undefined ? undefined : true}
        onChange={event => onChange({ ...typed, text: event.target.value })}
      >
        <option value="">{required ? 'choose' : 'none'}</option>
        {options.map(({ key, words }) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
      <span className={`${text.small} ${text.soft}`} id={`${id}-note`}>
        {wrong !== undefined && <Wrong>{wrong}</Wrong>}
      </span>
    </div>
  );
}

function YesNo({ input: { label, options }, typed, wrong, onChange }: Given) {
  const name = useId();
  return (
    <fieldset className={styles.yesno} aria-describedby={`${name}-note`}>
      <legend>{label}</legend>
      <div className={layout.row}>
        {options.map(({ key, words }) => (
          <label className={layout.row} key={key}>
            <input type="radio" name={name} checked={typed.text === key} onChange={() => onChange({ ...typed, text: key })} />
            <span>{words}</span>
          </label>
        ))}
      </div>
      <span className={`${text.small} ${text.soft}`} id={`${name}-note`}>
        {wrong !== undefined && <Wrong>{wrong}</Wrong>}
      </span>
    </fieldset>
  );
}

function Wrong({ children }: { readonly children: string }) {
  return <b className={styles.wrong}>{children}</b>;
}
