import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { PlateJson } from '#core/plate/plateFromJson.ts';
import { answer, api, type KeptPlate } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { PortionFields, portionJson, type TypedPortion, typedPortion } from './PortionFields.tsx';

type CompanionJson = NonNullable<PlateJson['companions']>[number];

/** A companion as the form holds it: the food with its label as the plate keeps it, and its portion. */
interface CompanionEntry {
  readonly key: string;
  readonly food: CompanionJson['food'];
  readonly withoutSalt?: CompanionJson['food'];
  readonly portion: TypedPortion;
}

/** Makes a plate or changes one. The companions' labels travel with the plate. */
export function PlateForm({ start, onDone }: { readonly start: KeptPlate | undefined; readonly onDone: () => void }) {
  const queries = useQueryClient();
  const [title, setTitle] = useState(start?.plate.title ?? '');
  const [portion, setPortion] = useState(typedPortion(start?.plate.portion));
  const [categories, setCategories] = useState<readonly string[]>(start?.plate.categories ?? []);
  const [companions, setCompanions] = useState<readonly CompanionEntry[]>(() => entriesOf(start?.plate.companions));
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const save = useMutation({
    mutationFn: () => {
      const id = start?.plate.id ?? crypto.randomUUID();
      const plate: PlateJson = {
        id,
        title,
        portion: portionJson(portion),
        companions: companions.map(({ food, withoutSalt, portion: own }) => ({
          food,
          portion: portionJson(own),
          ...(withoutSalt === undefined ? {} : { withoutSalt }),
        })),
        ...(categories.length === 0 ? {} : { categories }),
      };
      return answer(api.plates[':id'].$put({ param: { id }, json: { plate, version: start?.version ?? null } }));
    },
    onSuccess: async () => {
      await queries.invalidateQueries();
      onDone();
    },
  });
  const known = [...new Set([...(workspace.data?.categories.map(({ name }) => name) ?? []), ...categories])];
  return (
    <form
      className={`${layout.sheet} ${layout.stack}`}
      ref={focusFirstField}
      onSubmit={event => {
        event.preventDefault();
        save.mutate();
      }}
    >
      <h2>{start === undefined ? 'A new plate' : 'Change this plate'}</h2>
      <label className={layout.field}>
        <span>As it reads in a sentence (two slices of rye bread)</span>
        <input type="text" required maxLength={200} value={title} onChange={event => setTitle(event.target.value)} />
      </label>
      <div className={layout.formgrid}>
        <PortionFields name="Portion of the food" value={portion} onChange={setPortion} />
      </div>
      {companions.map(entry => (
        <fieldset className={layout.row} key={entry.key}>
          <legend>Eaten with {entry.food.name}</legend>
          <PortionFields
            name="How much of it"
            value={entry.portion}
            onChange={own => setCompanions(companions.map(one => (one === entry ? { ...one, portion: own } : one)))}
          />
          <button
            type="button"
            className={button.quiet}
            aria-label={`Take ${entry.food.name} off the plate`}
            onClick={() => setCompanions(companions.filter(one => one !== entry))}
          >
            Take it off
          </button>
        </fieldset>
      ))}
      <AddCompanion onAdd={entry => setCompanions([...companions, entry])} />
      {known.length > 0 && (
        <fieldset>
          <legend>What is eaten this way (none ticked: anything)</legend>
          <div className={layout.row}>
            {known.map(name => (
              <label className={layout.row} key={name}>
                <input
                  type="checkbox"
                  checked={categories.includes(name)}
                  onChange={event => setCategories(event.target.checked ? [...categories, name] : categories.filter(one => one !== name))}
                />
                <span>{name}</span>
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <Told error={save.error} />
      <p className={layout.row}>
        <button type="submit" className={button.act} disabled={save.isPending}>
          Save the plate
        </button>
        <button type="button" className={button.quiet} onClick={onDone}>
          Cancel
        </button>
      </p>
    </form>
  );
}

/** Finds a food of the shelf and puts it on the plate. */
function AddCompanion({ onAdd }: { readonly onAdd: (entry: CompanionEntry) => void }) {
  const [search, setSearch] = useState('');
  const [chosen, setChosen] = useState('');
  const foods = useQuery({ queryKey: ['foods', search, ''], queryFn: () => answer(api.foods.$get({ query: { search } })) });
  const add = useMutation({
    mutationFn: companionFood,
    onSuccess: food => {
      onAdd({ key: crypto.randomUUID(), food, portion: { amount: '1', unit: 'servings' } });
      setChosen('');
    },
  });
  return (
    <fieldset className={layout.row}>
      <legend>Add a companion from the shelf</legend>
      <label className={layout.field}>
        <span>Search</span>
        <input type="search" value={search} onChange={event => setSearch(event.target.value)} />
      </label>
      <label className={layout.field}>
        <span>Food</span>
        <select value={chosen} onChange={event => setChosen(event.target.value)}>
          <option value="">choose one</option>
          {foods.data?.slice(0, 100).map(({ id, name, maker }) => (
            <option key={id} value={id}>
              {name}
              {maker === undefined ? '' : ` · ${maker}`}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className={button.quiet} disabled={chosen === '' || add.isPending} onClick={() => add.mutate(chosen)}>
        Put it on the plate
      </button>
      {foods.data?.length === 0 && <p className={text.soft}>No food of this name is on the shelf. Add its label under Data first.</p>}
      <Told error={foods.error ?? add.error} />
    </fieldset>
  );
}

function entriesOf(companions: PlateJson['companions'] = []): readonly CompanionEntry[] {
  return companions.map(({ food, portion, withoutSalt }) => ({
    key: crypto.randomUUID(),
    food,
    portion: typedPortion(portion),
    ...(withoutSalt === undefined ? {} : { withoutSalt }),
  }));
}

async function companionFood(id: string): Promise<CompanionEntry['food']> {
  const food = await answer(api.foods[':id'].$get({ param: { id } }));
  const label = food.history.find(({ stands }) => stands)?.printed ?? { panel: {} };
  return {
    id,
    name: food.name,
    label,
    ...(food.gramsPerMeasure === undefined ? {} : { gramsPerMeasure: food.gramsPerMeasure }),
    ...(food.densityGPerMl === undefined ? {} : { densityGPerMl: food.densityGPerMl }),
  };
}
