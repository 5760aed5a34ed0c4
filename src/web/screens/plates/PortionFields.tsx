/** A portion as it is typed: a number, and what it is counted in. */
export interface TypedPortion {
  readonly amount: string;
  readonly unit: string;
}

const units = ['servings', 'grams', 'milliliters', 'slice', 'cup', 'tablespoon', 'teaspoon', 'piece', 'cracker'];
const metric = ['servings', 'grams', 'milliliters'];

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
      <label className="field">
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
      <label className="field">
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

export function portionJson({ amount, unit }: TypedPortion): Record<string, unknown> {
  return metric.includes(unit) ? { [unit]: Number(amount) } : { measure: unit, count: Number(amount) };
}

export function typedPortion(json: unknown): TypedPortion {
  const portion = (json ?? { servings: 1 }) as Readonly<Record<string, unknown>>;
  const unit = metric.find(one => portion[one] !== undefined);
  return unit === undefined ? { amount: String(portion.count), unit: String(portion.measure) } : { amount: String(portion[unit]), unit };
}
