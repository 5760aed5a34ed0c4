import type { Portion } from '#core/plate/plate.ts';
import layout from '../../ui/layout.module.css';

/** A portion as it is typed: a number, and what it is counted in. */
export interface TypedPortion {
  readonly amount: string;
  readonly unit: string;
}

const units = ['servings', 'grams', 'milliliters', 'slice', 'cup', 'tablespoon', 'teaspoon', 'piece', 'cracker'];

/** Two fields, side by side, for one portion. */
export function PortionFields({
  name,
  value,
  onChange,
}: {
  readonly name: string;
  readonly value: TypedPortion;
  readonly onChange: (value: TypedPortion) => void;
}) {
  return (
    <>
      <label className={layout.field}>
        <span>{name}</span>
        <input
          type="number"
          required
          min="0.01"
          step="any"
          value={value.amount}
          onChange={event => onChange({ ...value, amount: event.target.value })}
        />
      </label>
      <label className={layout.field}>
        <span>Counted in</span>
        <select value={value.unit} onChange={event => onChange({ ...value, unit: event.target.value })}>
          {(units.includes(value.unit) ? units : [...units, value.unit]).map(one => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
    </>
  );
}

export function portionJson({ amount, unit }: TypedPortion): Portion {
  const count = Number(amount);
  if (unit === 'servings') return { servings: count };
  if (unit === 'grams') return { grams: count };
  return unit === 'milliliters' ? { milliliters: count } : { measure: unit, count };
}

export function typedPortion(portion: Portion = { servings: 1 }): TypedPortion {
  if ('servings' in portion) return { amount: String(portion.servings), unit: 'servings' };
  if ('grams' in portion) return { amount: String(portion.grams), unit: 'grams' };
  if ('milliliters' in portion) return { amount: String(portion.milliliters), unit: 'milliliters' };
  return { amount: String(portion.count), unit: portion.measure };
}
