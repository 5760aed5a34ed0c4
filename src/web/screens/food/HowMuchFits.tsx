import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { Slider } from '../../ui/form/Slider.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { plateFor } from '../survey/surveyRequest.ts';
import type { FoodSearch } from './foodSearch.ts';

/** How much of a food fits on a plate: a portion to slide, its verdict, and the portion at which the verdict tips. */
export function HowMuchFits({
  foodId,
  category,
  start,
}: {
  readonly foodId: string;
  readonly category: string | undefined;
  readonly start: FoodSearch;
}) {
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const [chosen, setPlate] = useState(start.plate);
  const plate = chosen ?? plateFor(category, plates.data);
  const [yardstick, setYardstick] = useState(start.yardstick ?? 'low-in-sodium-as-eaten');
  const [step, setStep] = useState(15);
  const portions = useQuery({
    queryKey: ['portions', foodId, plate, yardstick],
    queryFn: () => answer(api['food-portions'].$post({ json: { foodId, plate, yardstick, switchedOn: [] } })),
    enabled: plates.data !== undefined,
    placeholderData: keepPreviousData,
  });
  const now = portions.data?.steps[step];
  return (
    <section className={layout.sheet} aria-labelledby="fits-title">
      <h2 id="fits-title">How much of it fits</h2>
      <Told error={plates.error ?? yardsticks.error ?? portions.error} />
      <div className={layout.formgrid}>
        <Choice
          label="Plate"
          value={plate}
          choices={(plates.data ?? []).map(({ plate: { id, title } }) => [id, title])}
          onChange={setPlate}
        />
        <Choice
          label="Yardstick"
          value={yardstick}
          choices={(yardsticks.data ?? []).map(({ yardstick: { id, title } }) => [id, title])}
          onChange={setYardstick}
        />
      </div>
      {portions.data?.noPortion !== undefined && (
        <p aria-live="polite">
          <VerdictMark word={portions.data.noPortion.verdict} /> <b>{portions.data.tippingText}</b>{' '}
          <span className={text.soft}>{portions.data.noPortion.why}</span>
        </p>
      )}
      {portions.data !== undefined && portions.data.noPortion === undefined && now !== undefined && (
        <>
          <Slider
            label="Portion"
            value={step}
            onChange={setStep}
            last={portions.data.steps.length - 1}
            words={`${now.text}: ${now.verdict}`}
          />
          <p aria-live="polite">
            <VerdictMark word={now.verdict} /> at {now.text}. <span className={text.soft}>{now.why}</span>
          </p>
          <p>
            <b>{portions.data.tippingText}</b>
          </p>
          <ul className={text.ways}>
            {portions.data.waysIn.map(({ what }) => (
              <li key={what}>{what}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
