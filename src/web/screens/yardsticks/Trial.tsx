import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { verdictWords } from '#core/yardstick/yardstick.ts';
import type { YardstickJson } from '#core/yardstick/yardstickFromJson.ts';
import { answer, api } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { plainChoices } from '../../ui/form/choices.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { plateFor } from '../survey/surveyRequest.ts';

/**
 * The verdicts of a category of one's choice before and after the change, while it is being made. While something is missing in it, `after` is
 * undefined and the verdicts of the last whole one stay.
 */
export function Trial({ before, after }: { readonly before: YardstickJson; readonly after: YardstickJson | undefined }) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const [chosenCategory, setCategory] = useState<string>();
  const [chosenPlate, setPlate] = useState<string>();
  const category = chosenCategory ?? workspace.data?.categories[0]?.name ?? '';
  const plate = chosenPlate ?? plateFor(category, plates.data);
  const trial = useDeferredValue(after);
  const ask = (yardstick: YardstickJson) => answer(api.survey.$post({ json: { category, plate, yardstick, switchedOn: [] } }));
  const isKnown = category !== '' && plates.data !== undefined;
  const was = useQuery({ queryKey: ['trial', category, plate, before], queryFn: () => ask(before), enabled: isKnown });
  const now = useQuery({
    queryKey: ['trial', category, plate, trial],
    queryFn: () => ask(trial!),
    enabled: isKnown && trial !== undefined,
    placeholderData: keepPreviousData,
  });
  if (!isKnown) return null;
  return (
    <div className={`${layout.notice} ${layout.stack}`}>
      <div className={layout.formgrid}>
        <Choice
          label="Try it on"
          choices={plainChoices(workspace.data?.categories.map(({ name }) => name) ?? [])}
          value={category}
          onChange={setCategory}
        />
        <Choice label="Eaten with" choices={plates.data.map(({ plate: { id, title } }) => [id, title])} value={plate} onChange={setPlate} />
      </div>
      <Told error={was.error ?? now.error} />
      {was.data !== undefined && now.data !== undefined && (
        <p role="status">{verdictWords.map(word => `${word} ${was.data.counts[word]} → ${now.data.counts[word]}`).join(', ')}.</p>
      )}
    </div>
  );
}
