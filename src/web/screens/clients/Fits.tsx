import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { evenPattern } from '#core/client/record/record.ts';
import { answer, api, type Client } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { plainChoices } from '../../ui/form/choices.ts';
import { Tick, Ticks } from '../../ui/form/Ticks.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { plateFor } from '../survey/surveyRequest.ts';
import styles from './Client.module.css';
import { FitsCounts } from './FitsCounts.tsx';
import { FittingFoods } from './FittingFoods.tsx';
import { MealPattern } from './MealPattern.tsx';

/** The shelf judged for this client, category by category on its plate: a meal's share of the day, how much of each food fits in it, and what has to be asked. */
export function Fits({ client }: { readonly client: Client }) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const pattern = client.mealPattern ?? [...evenPattern];
  const categories = workspace.data?.categories.map(({ name }) => name) ?? [];
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const [chosenPlates, setPlates] = useState<Readonly<Record<string, string>>>({});
  const [meal, setMeal] = useState('lunch');
  const [useEstimates, setUseEstimates] = useState(false);
  const [chosenNutrient, setNutrient] = useState<string>();
  const shown = ticked.length === 0 ? categories : categories.filter(name => ticked.includes(name));
  const served = shown.map(category => ({ category, plate: chosenPlates[category] ?? plateFor(category, plates.data) }));
  const [only] = served.length === 1 ? served : [];
  const fits = useQuery({
    queryKey: ['client', client.id, 'fits', client.version, served, meal, useEstimates],
    queryFn: () => answer(api.clients[':id'].fits.$post({ param: { id: client.id }, json: { served, meal, useEstimates } })),
    enabled: served.length > 0 && plates.data !== undefined,
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const { none, tests = [], nutrients = [], counts, notTold = [], rows = [], toAsk = [] } = fits.data ?? {};
  const titleOf = (id: string) => plates.data?.find(({ plate }) => plate.id === id)?.plate.title ?? id;
  // What matters most is no column where no label tells it: the next one is, until another is chosen.
  const isTold = (at: number): boolean => rows.some(({ amounts }) => amounts[at]?.sortBy !== null);
  const at = Math.max(
    0,
    nutrients.findIndex(({ nutrient }, place) => (chosenNutrient === undefined ? isTold(place) : nutrient === chosenNutrient)),
  );
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="client-fits-title">
      <h2 id="client-fits-title">What fits</h2>
      <div className={layout.noprint}>
        <Ticks
          label="Categories; all of them while none is ticked"
          choices={plainChoices(categories)}
          value={ticked}
          onChange={setTicked}
        />
      </div>
      <div className={`${layout.formgrid} ${layout.noprint}`}>
        {only !== undefined && (
          <Choice
            label="Plate"
            choices={plates.data?.map(({ plate: { id, title } }) => [id, title] as const) ?? []}
            gone=""
            value={only.plate}
            onChange={plate => setPlates({ ...chosenPlates, [only.category]: plate })}
          />
        )}
        <Choice
          label="Meal"
          choices={pattern.map(({ name, percent }) => [name, `${name}, ${percent}% of the day`] as const)}
          value={meal}
          onChange={setMeal}
        />
        <Choice
          label="Amount shown"
          choices={nutrients.map(({ nutrient, title }) => [nutrient, title] as const)}
          gone=""
          value={nutrients[at]?.nutrient ?? ''}
          onChange={setNutrient}
        />
        <Tick label="use estimated minerals, at the highest they could be" value={useEstimates} onChange={setUseEstimates} />
      </div>
      {only === undefined && served.length > 0 && (
        <p className={`${text.small} ${text.soft}`}>
          Eaten as usual: {served.map(({ category, plate }) => `${category}, ${titleOf(plate)}`).join('; ')}.
          <span className={layout.noprint}> Tick one category alone to choose another plate for it.</span>
        </p>
      )}
      <MealPattern key={JSON.stringify(pattern)} client={client} pattern={pattern} />
      <Told error={workspace.error ?? plates.error ?? fits.error} />
      {none !== undefined && <p className={layout.notice}>{none}</p>}
      {counts !== undefined && rows.length > 0 && (
        <>
          <FitsCounts counts={counts} />
          <p className={`${text.small} ${text.soft}`}>{tests.join('; ')}.</p>
          {notTold.map(({ mineral, words }) => (
            <p className={layout.notice} key={mineral}>
              {words.charAt(0).toUpperCase() + words.slice(1)}.
            </p>
          ))}
          <div className={styles.foods}>
            <FittingFoods
              foods={rows}
              amount={{ at, title: nutrients[at]?.title ?? '' }}
              search={{ client: client.id, meal, ...(useEstimates ? { useEstimates: true as const } : {}) }}
            />
          </div>
        </>
      )}
      {toAsk.length > 0 && (
        <details>
          <summary>
            To ask the maker about: {toAsk.length} {toAsk.length === 1 ? 'food' : 'foods'}
          </summary>
          <ul>
            {toAsk.map(one => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
