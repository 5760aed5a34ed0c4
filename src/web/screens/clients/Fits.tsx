import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { evenPattern } from '#core/client/record/record.ts';
import { answer, api, type Client } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { plainChoices } from '../../ui/form/choices.ts';
import { Tick } from '../../ui/form/Ticks.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { plateFor } from '../survey/surveyRequest.ts';
import { FittingFoods } from './FittingFoods.tsx';
import { MealPattern } from './MealPattern.tsx';

/** The shelf judged for this client: a meal's share of the day, how much of each food fits in it, and what has to be asked. */
export function Fits({ client }: { readonly client: Client }) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const pattern = client.mealPattern ?? [...evenPattern];
  const categories = workspace.data?.categories.map(({ name }) => name) ?? [];
  const [chosenCategory, setCategory] = useState<string>();
  const [chosenPlate, setPlate] = useState<string>();
  const [meal, setMeal] = useState('lunch');
  const [useEstimates, setUseEstimates] = useState(false);
  const category = chosenCategory ?? categories[0] ?? '';
  const plate = chosenPlate ?? plateFor(category, plates.data);
  const fits = useQuery({
    queryKey: ['client', client.id, 'fits', client.version, category, plate, meal, useEstimates],
    queryFn: () => answer(api.clients[':id'].fits.$post({ param: { id: client.id }, json: { category, plate, meal, useEstimates } })),
    enabled: category !== '' && plates.data !== undefined,
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const { none, tests = [], notTold = [], rows = [], toAsk = [] } = fits.data ?? {};
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="client-fits-title">
      <h2 id="client-fits-title">What fits</h2>
      <div className={`${layout.formgrid} ${layout.noprint}`}>
        <Choice label="Category" choices={plainChoices(categories)} value={category} onChange={setCategory} />
        <Choice
          label="Plate"
          choices={plates.data?.map(({ plate: { id, title } }) => [id, title] as const) ?? []}
          gone=""
          value={plate}
          onChange={setPlate}
        />
        <Choice
          label="Meal"
          choices={pattern.map(({ name, percent }) => [name, `${name}, ${percent}% of the day`] as const)}
          value={meal}
          onChange={setMeal}
        />
        <Tick label="use estimated minerals, at the highest they could be" value={useEstimates} onChange={setUseEstimates} />
      </div>
      <MealPattern key={JSON.stringify(pattern)} client={client} pattern={pattern} />
      <Told error={workspace.error ?? plates.error ?? fits.error} />
      {none !== undefined && <p className={layout.notice}>{none}</p>}
      {rows.length > 0 && (
        <>
          <p className={`${text.small} ${text.soft}`}>{tests.join('; ')}.</p>
          {notTold.map(({ mineral, words }) => (
            <p className={layout.notice} key={mineral}>
              {words.charAt(0).toUpperCase() + words.slice(1)}.
            </p>
          ))}
          <FittingFoods
            foods={rows}
            search={{ client: client.id, plate, meal, ...(useEstimates ? { useEstimates: true as const } : {}) }}
          />
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
