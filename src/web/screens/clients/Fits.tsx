import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { evenPattern } from '#core/client/record/record.ts';
import { answer, api, type Client } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { plateFor } from '../survey/surveyRequest.ts';
import { MealPattern } from './MealPattern.tsx';

const mostShown = 200;

/** The shelf judged for this client: a meal's share of the day, how much of each food fits in it, and what has to be asked. */
export function Fits({ client, onChanged }: { readonly client: Client; readonly onChanged: () => Promise<void> }) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const pattern = client.mealPattern ?? evenPattern;
  const [chosenCategory, setCategory] = useState<string>();
  const [chosenPlate, setPlate] = useState<string>();
  const [meal, setMeal] = useState('lunch');
  const [useEstimates, setUseEstimates] = useState(false);
  const category = chosenCategory ?? workspace.data?.categories[0]?.name ?? '';
  const plate = chosenPlate ?? plateFor(category, plates.data);
  const fits = useQuery({
    queryKey: ['client', client.id, 'fits', client.version, category, plate, meal, useEstimates],
    queryFn: () => answer(api.clients[':id'].fits.$post({ param: { id: client.id }, json: { category, plate, meal, useEstimates } })),
    enabled: category !== '' && plates.data !== undefined,
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="client-fits-title">
      <h2 id="client-fits-title">What fits</h2>
      <div className={`${layout.formgrid} ${layout.noprint}`}>
        <label className={layout.field}>
          <span>Category</span>
          <select value={category} onChange={event => setCategory(event.target.value)}>
            {workspace.data?.categories.map(({ name }) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <label className={layout.field}>
          <span>Plate</span>
          <select value={plate} onChange={event => setPlate(event.target.value)}>
            {plates.data?.map(({ plate: one }) => (
              <option key={String(one.id)} value={String(one.id)}>
                {String(one.title)}
              </option>
            ))}
          </select>
        </label>
        <label className={layout.field}>
          <span>Meal</span>
          <select value={meal} onChange={event => setMeal(event.target.value)}>
            {pattern.map(({ name, percent }) => (
              <option key={name} value={name}>
                {name}, {percent}% of the day
              </option>
            ))}
          </select>
        </label>
        <label className={layout.row}>
          <input type="checkbox" checked={useEstimates} onChange={event => setUseEstimates(event.target.checked)} />
          <span>use estimated minerals, at the highest they could be</span>
        </label>
      </div>
      <MealPattern key={client.version} client={client} pattern={pattern} onChanged={onChanged} />
      <Told error={fits.error} />
      {fits.data?.none !== undefined && <p className={layout.notice}>{fits.data.none}</p>}
      {fits.data !== undefined && fits.data.rows.length > 0 && (
        <>
          <p className={`${text.small} ${text.soft}`}>{fits.data.tests.join('; ')}.</p>
          {fits.data.notTold.map(({ mineral, words }) => (
            <p className={layout.notice} key={mineral}>
              {words.charAt(0).toUpperCase() + words.slice(1)}.
            </p>
          ))}
          <section className={layout.scroll} tabIndex={0} aria-label="Foods judged for this client">
            <table>
              <thead>
                <tr>
                  <th scope="col">Food</th>
                  <th scope="col">Verdict</th>
                  <th scope="col">Fits in this meal</th>
                  <th scope="col">Fits in a day</th>
                </tr>
              </thead>
              <tbody>
                {fits.data.rows.slice(0, mostShown).map(row => (
                  <tr key={row.foodId}>
                    <td>
                      <Link
                        to="/foods/$foodId"
                        params={{ foodId: row.foodId }}
                        search={{ client: client.id, plate, meal, ...(useEstimates ? { useEstimates: true as const } : {}) }}
                      >
                        {row.name}
                      </Link>
                      <span className={text.why}>{row.maker}</span>
                      {row.marks.map(mark => (
                        <span className={text.why} key={mark}>
                          {mark}
                        </span>
                      ))}
                    </td>
                    <td>
                      <VerdictMark word={row.verdict} /> {row.closeCall && <span className={text.close}>close call</span>}{' '}
                      {row.estimated && <span className={text.close}>estimated</span>}
                      {row.offer !== 'never' && row.offer !== 'ask' && <span className={text.why}>{row.why}</span>}
                    </td>
                    {row.offer === 'never' || row.offer === 'ask' ? (
                      <td colSpan={2}>
                        <b>{row.why}</b>
                      </td>
                    ) : (
                      <>
                        <td>{row.inMeal}</td>
                        <td>{row.inDay}</td>
                      </>
                    )}
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </>
      )}
      {(fits.data?.toAsk.length ?? 0) > 0 && (
        <details>
          <summary>
            To ask the maker about: {fits.data?.toAsk.length} {fits.data?.toAsk.length === 1 ? 'food' : 'foods'}
          </summary>
          <ul>
            {fits.data?.toAsk.map(one => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
