import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { verdictWords } from '#core/yardstick/yardstick.ts';
import type { YardstickJson } from '#core/yardstick/yardstickFromJson.ts';
import { answer, api } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { plateFor } from '../survey/surveyRequest.ts';

/** The verdicts of a category of one's choice before and after the change, while it is being made. */
export function Trial({ before, after }: { readonly before: YardstickJson; readonly after: YardstickJson }) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const [chosenCategory, setCategory] = useState<string>();
  const [chosenPlate, setPlate] = useState<string>();
  const category = chosenCategory ?? workspace.data?.categories[0]?.name ?? '';
  const plate = chosenPlate ?? plateFor(category, plates.data);
  const trial = useDeferredValue(after);
  const ask = (yardstick: YardstickJson) => answer(api.survey.$post({ json: { category, plate, yardstick, switchedOn: [] } }));
  const enabled = category !== '' && plates.data !== undefined;
  const was = useQuery({ queryKey: ['trial', category, plate, before], queryFn: () => ask(before), enabled });
  const now = useQuery({
    queryKey: ['trial', category, plate, trial],
    queryFn: () => ask(trial),
    enabled,
    placeholderData: keepPreviousData,
  });
  if (!enabled) return null;
  return (
    <div className={`${layout.notice} ${layout.stack}`}>
      <div className={layout.formgrid}>
        <label className={layout.field}>
          <span>Try it on</span>
          <select value={category} onChange={event => setCategory(event.target.value)}>
            {workspace.data?.categories.map(({ name }) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <label className={layout.field}>
          <span>Eaten with</span>
          <select value={plate} onChange={event => setPlate(event.target.value)}>
            {plates.data?.map(({ plate: one }) => (
              <option key={one.id} value={one.id}>
                {one.title}
              </option>
            ))}
          </select>
        </label>
      </div>
      <Told error={was.error ?? now.error} />
      {was.data !== undefined && now.data !== undefined && (
        <p role="status">{verdictWords.map(word => `${word} ${was.data.counts[word]} → ${now.data.counts[word]}`).join(', ')}.</p>
      )}
    </div>
  );
}
