import type { Formula } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone } from '../../ui/form/choices.ts';
import { Figure, type TypedFigure } from '../../ui/form/Figure.tsx';
import { OneOf } from '../../ui/form/OneOf.tsx';
import type { Bound } from '../../ui/form/typed.ts';
import styles from './Calculators.module.css';

/** One input of a formula: a figure with its unit, a choice, or yes and no. */
export function InputField({ input, field }: { readonly input: Formula['inputs'][number]; readonly field: Bound<TypedFigure> }) {
  const { kind, label, units, options, required, help } = input;
  const { value, onChange, wrong } = field;
  const chosen = { value: value.text, onChange: (text: string) => onChange({ ...value, text }), wrong };
  const choices = options.map(({ key, words }) => [key, words] as const);
  if (kind === 'choice') return <Choice label={label} choices={orNone(required ? 'choose' : 'none', choices)} {...chosen} />;
  if (kind !== 'figure')
    return (
      <div className={styles.yesno}>
        <OneOf label={label} choices={choices} {...chosen} />
      </div>
    );
  const isFeet = value.unit === 'ft in';
  const possible = (units.find(({ unit }) => unit === value.unit) ?? units[0])?.possible;
  const said = [help, possible].filter(Boolean).join('; ');
  return (
    <Figure
      label={label}
      units={units.map(({ unit }) => [unit, units.length > 1 ? unitName(unit) : unit])}
      aside={required ? undefined : 'may be left out'}
      hint={wrong === undefined && said !== '' ? said : undefined}
      placeholder={isFeet ? '5 ft 9 in' : undefined}
      takesWords={isFeet}
      {...field}
    />
  );
}

function unitName(unit: string): string {
  return unit === 'ft in' ? 'ft, in' : unit.replace(/^umol/, 'µmol').replace('/(24.h)', ' a day').replace('{ratio}', '');
}
