import { useQuery } from '@tanstack/react-query';
import { answer, api, type GuidePreview } from '../../api.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { Sentence } from '../survey/Sentence.tsx';
import { surveyRequest } from '../survey/surveyRequest.ts';
import type { GuidePart } from './GuideWords.tsx';

/** Which survey the guide is made from, in which order its foods stand, and when labels are due for another look. */
export function GuideSurvey({ typed, change, wrong, tests }: GuidePart & { readonly tests: GuidePreview['tests'] }) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const { survey } = typed;
  const search = { plate: survey.plateId, yardstick: survey.yardstickId, ...survey };
  const choosable = tests.filter(({ isOff }) => isOff);
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="survey-title">
      <h2 id="survey-title">The survey it is made from</h2>
      <Told error={workspace.error ?? plates.error ?? yardsticks.error} />
      <Sentence
        request={surveyRequest(search, { category: survey.category, plates: plates.data })}
        portionText="the plate’s portion"
        categories={workspace.data?.categories.map(({ name }) => name) ?? []}
        plates={plates.data ?? []}
        yardsticks={yardsticks.data ?? []}
        onChange={({ category, plate, yardstick, setting, servings }) =>
          change({
            survey: {
              ...survey,
              ...(category === undefined ? {} : { category }),
              ...(plate === undefined || plate === '' ? {} : { plateId: plate }),
              ...(yardstick === undefined ? {} : { yardstickId: yardstick, switchedOn: [] }),
              ...(setting === undefined ? {} : { setting }),
              ...(servings === undefined ? {} : { servings }),
            },
          })
        }
      />
      {choosable.map(({ id, text }) => (
        <label className={layout.row} key={id}>
          <input
            type="checkbox"
            checked={survey.switchedOn.includes(id)}
            onChange={event =>
              change({
                survey: {
                  ...survey,
                  switchedOn: event.target.checked ? [...survey.switchedOn, id] : survey.switchedOn.filter(one => one !== id),
                },
              })
            }
          />
          <span>{text}</span>
        </label>
      ))}
      <div className={layout.formgrid}>
        <label className={layout.field}>
          <span>Foods stand</span>
          <select value={typed.arrangement} onChange={event => change({ arrangement: event.target.value })}>
            <option value="shelf">as a shopper walks, by aisle</option>
            <option value="maker">by maker</option>
            <option value="margin">by what is to spare, most first</option>
          </select>
        </label>
        <Field
          label="Days until a label is read again"
          type="number"
          value={typed.recheckAfterDays}
          onChange={recheckAfterDays => change({ recheckAfterDays })}
          wrong={wrong('recheckAfterDays')}
        />
      </div>
      {typed.arrangement === 'shelf' && (
        <Field
          label="Aisles in the order of the walk, one a line"
          rows={4}
          value={typed.aisles}
          onChange={aisles => change({ aisles })}
          hint="A food stands in the aisle of its first place to buy."
        />
      )}
    </section>
  );
}
