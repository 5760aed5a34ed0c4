import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Food, type FoodShort, type KeptPlate } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

/** How foods are eaten: the portion that is surveyed, and what it is eaten with. */
export function PlatesScreen() {
  const queries = useQueryClient();
  const [isAdding, setAdding] = useState(false);
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer<KeptPlate[]>(api.plates.$get()) });
  const remove = useMutation({
    mutationFn: ({ plate, version }: KeptPlate) =>
      answer(api.plates[':id'].$delete({ param: { id: String(plate.id) }, query: { version: String(version) } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['plates'] }),
  });
  return (
    <>
      <div className="spread">
        <h1>Plates</h1>
        <button type="button" className="act" onClick={() => setAdding(true)}>
          Add a plate
        </button>
      </div>
      <Told error={plates.error ?? remove.error} />
      {isAdding && <PlateForm onDone={() => setAdding(false)} />}
      <div className="cards">
        {plates.data?.map(kept => (
          <article className="sheet" key={String(kept.plate.id)}>
            <h2>{upper(String(kept.plate.title))}</h2>
            <p className="soft small">{kept.isBuiltIn ? 'built in' : kept.isDemo ? 'demo, invented' : 'your own'}</p>
            <p>Portion of the food: {portionWords(kept.plate.portion)}.</p>
            <p>{kept.companionsText}</p>
            {!kept.isBuiltIn && (
              <button
                type="button"
                className="quiet"
                onClick={() => remove.mutate(kept)}
                aria-label={`Remove the plate ${String(kept.plate.title)}`}
              >
                Remove
              </button>
            )}
          </article>
        ))}
      </div>
    </>
  );
}

/** A plate with one companion from the shelf, or none. The companion's label travels with the plate. */
function PlateForm({ onDone }: { readonly onDone: () => void }) {
  const queries = useQueryClient();
  const [title, setTitle] = useState('');
  const [amount, setAmount] = useState('1');
  const [unit, setUnit] = useState('servings');
  const [search, setSearch] = useState('');
  const [companion, setCompanion] = useState('');
  const [companionServings, setCompanionServings] = useState('1');
  const foods = useQuery({ queryKey: ['foods', search, ''], queryFn: () => answer<FoodShort[]>(api.foods.$get({ query: { search } })) });
  const save = useMutation({
    mutationFn: async () => {
      const companions =
        companion === '' ? [] : [{ food: await companionFood(companion), portion: { servings: Number(companionServings) } }];
      const id = crypto.randomUUID();
      const plate = { id, title, portion: portionOf(unit, Number(amount)), companions };
      return answer(api.plates[':id'].$put({ param: { id }, json: { plate, version: null } }));
    },
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['plates'] });
      onDone();
    },
  });
  return (
    <form
      className="sheet stack"
      onSubmit={event => {
        event.preventDefault();
        save.mutate();
      }}
    >
      <h2>A new plate</h2>
      <label className="field">
        <span>As it reads in a sentence (two slices of rye bread)</span>
        <input type="text" required value={title} onChange={event => setTitle(event.target.value)} />
      </label>
      <div className="formgrid">
        <label className="field">
          <span>Portion of the food</span>
          <input type="number" required min="0.01" step="any" value={amount} onChange={event => setAmount(event.target.value)} />
        </label>
        <label className="field">
          <span>Counted in</span>
          <select value={unit} onChange={event => setUnit(event.target.value)}>
            {['servings', 'grams', 'milliliters', 'slice', 'cup', 'tablespoon', 'teaspoon', 'piece'].map(one => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <label className="field">
          <span>Search a companion</span>
          <input type="search" value={search} onChange={event => setSearch(event.target.value)} />
        </label>
        <label className="field">
          <span>Eaten with</span>
          <select value={companion} onChange={event => setCompanion(event.target.value)}>
            <option value="">nothing</option>
            {foods.data?.slice(0, 100).map(({ id, name, maker }) => (
              <option key={id} value={id}>
                {name}
                {maker === undefined ? '' : ` · ${maker}`}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span>Servings of it</span>
          <input
            type="number"
            min="0.01"
            step="any"
            value={companionServings}
            onChange={event => setCompanionServings(event.target.value)}
          />
        </label>
      </div>
      <Told error={save.error} />
      <p className="row">
        <button type="submit" className="act">
          Save the plate
        </button>
        <button type="button" className="quiet" onClick={onDone}>
          Cancel
        </button>
      </p>
    </form>
  );
}

async function companionFood(id: string) {
  const food = await answer<Food>(api.foods[':id'].$get({ param: { id } }));
  const label = food.history.find(({ stands }) => stands)?.printed ?? {};
  return {
    id,
    name: food.name,
    label,
    ...(food.gramsPerMeasure === undefined ? {} : { gramsPerMeasure: food.gramsPerMeasure }),
    ...(food.densityGPerMl === undefined ? {} : { densityGPerMl: food.densityGPerMl }),
  };
}

function portionOf(unit: string, amount: number): Record<string, unknown> {
  return unit === 'servings' || unit === 'grams' || unit === 'milliliters' ? { [unit]: amount } : { measure: unit, count: amount };
}

function portionWords(portion: unknown): string {
  const given = (portion ?? {}) as {
    readonly servings?: number;
    readonly grams?: number;
    readonly milliliters?: number;
    readonly measure?: string;
    readonly count?: number;
  };
  if (given.grams !== undefined) return `${given.grams} g`;
  if (given.milliliters !== undefined) return `${given.milliliters} mL`;
  if (given.servings !== undefined) return given.servings === 1 ? 'one serving' : `${given.servings} servings`;
  return `${given.count} ${given.measure}${given.count === undefined || given.count > 1 ? 's' : ''}`;
}

function upper(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
