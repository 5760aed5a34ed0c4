import { additiveClasses } from '#core/additive/additive.ts';
import { factsOf, isNumberMeasure } from '#core/yardstick/measures/measureFacts.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { type JsonTest, kindChoices, measureOfKind, nutrientChoices, testBases } from './jsonTest.ts';

const boundChoices = [
  ['atMost', 'at most'],
  ['atLeast', 'at least'],
  ['below', 'under'],
] as const;
type BoundKind = (typeof boundChoices)[number][0];

/** One test of a yardstick: what is measured, on which basis, against which bound, and where the bound comes from. */
export function TestFields({
  test,
  text,
  onChange,
  onRemove,
}: {
  readonly test: JsonTest;
  readonly text: string;
  readonly onChange: (test: JsonTest) => void;
  readonly onRemove: () => void;
}) {
  const { measure } = test;
  const others = isNumberMeasure(measure) ? factsOf(measure).otherFields : [];
  const kind = boundChoices.find(([one]) => test[one] !== undefined)?.[0];
  // A bound that was changed is no longer what its old source says.
  const bound = (next: BoundKind, figure: number): void => {
    const { atMost: _, atLeast: __, below: ___, ...rest } = test;
    onChange({ ...rest, [next]: figure, source: { kind: 'clinic', text: 'set in this workbench' } });
  };
  return (
    <fieldset className={layout.stack}>
      <legend>{text}</legend>
      <div className={layout.formgrid}>
        <Choice name="Measure" value={measure.kind} options={kindChoices} onChange={next => onChange(measureOfKind(test, next))} />
        {isNumberMeasure(measure) && (
          <Choice
            name="Nutrient"
            value={measure.nutrient}
            options={nutrientChoices}
            onChange={nutrient => onChange({ ...test, measure: { ...measure, nutrient } })}
          />
        )}
        {others.map(field => (
          <Choice
            key={field.title}
            name={field.title}
            value={field.nutrient}
            options={nutrientChoices}
            onChange={next => onChange({ ...test, measure: field.with(next) })}
          />
        ))}
        {measure.kind === 'additive' && (
          <Choice
            name="Additives"
            value={measure.class}
            options={additiveClasses.map(one => [one, one] as const)}
            onChange={next => onChange({ ...test, measure: { ...measure, class: next } })}
          />
        )}
        {measure.kind === 'ingredient' && (
          <label className={layout.field}>
            <span>Ingredient</span>
            <input
              type="text"
              required
              value={measure.kin}
              onChange={event => onChange({ ...test, measure: { ...measure, kin: event.target.value } })}
            />
          </label>
        )}
        <Choice name="Basis" value={test.basis} options={testBases(measure.kind)} onChange={basis => onChange({ ...test, basis })} />
        {kind !== undefined && (
          <>
            <Choice name="Bound" value={kind} options={boundChoices} onChange={next => bound(next, test[kind]!)} />
            <NumberField name="Figure" value={test[kind]!} onChange={figure => bound(kind, figure)} />
            <NumberField
              name="Nearly: over by no more than"
              value={test.slack ?? 0}
              min={0}
              onChange={slack => onChange({ ...test, slack })}
            />
          </>
        )}
        <label className={layout.field}>
          <span>Where the bound comes from</span>
          <input
            type="text"
            required
            value={test.source.text}
            onChange={event => onChange({ ...test, source: { kind: 'clinic', text: event.target.value } })}
          />
        </label>
      </div>
      <div className={layout.row}>
        <label className={layout.row}>
          <input type="checkbox" checked={test.off !== true} onChange={event => onChange({ ...test, off: !event.target.checked })} />
          <span>judged without being switched on</span>
        </label>
        {kind !== undefined && (
          <label className={layout.row}>
            <input
              type="checkbox"
              checked={test.useEstimates === true}
              onChange={event => onChange({ ...test, useEstimates: event.target.checked })}
            />
            <span>estimates may be used, at their safe end</span>
          </label>
        )}
        <button type="button" className={button.quiet} onClick={onRemove} aria-label={`Take off the test: ${text}`}>
          Take this test off
        </button>
      </div>
    </fieldset>
  );
}

function Choice<Key extends string>({
  name,
  value,
  options,
  onChange,
}: {
  readonly name: string;
  readonly value: Key;
  readonly options: readonly (readonly [Key, string])[];
  readonly onChange: (value: Key) => void;
}) {
  return (
    <label className={layout.field}>
      <span>{name}</span>
      <select
        value={value}
        onChange={event => {
          const chosen = options.find(([key]) => key === event.target.value);
          if (chosen !== undefined) onChange(chosen[0]);
        }}
      >
        {options.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

function NumberField({
  name,
  value,
  min,
  onChange,
}: {
  readonly name: string;
  readonly value: number;
  readonly min?: number;
  readonly onChange: (value: number) => void;
}) {
  return (
    <label className={layout.field}>
      <span>{name}</span>
      <input
        type="number"
        step="any"
        required
        min={min}
        defaultValue={value}
        onChange={event => event.target.value !== '' && onChange(Number(event.target.value))}
      />
    </label>
  );
}
