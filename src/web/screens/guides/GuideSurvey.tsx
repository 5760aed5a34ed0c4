import { useQuery } from '@tanstack/react-query';
import { answer, api, type GuidePreview } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import type { Choices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { Sentence } from '../survey/Sentence.tsx';
import { surveyRequest } from '../survey/surveyRequest.ts';
import type { TypedGuide } from './typedGuide.ts';

/** Which survey the guide is made from, in which order its foods stand, and when labels are due for another look. */
export function GuideSurvey({ typed, tests }: { readonly typed: Typed<TypedGuide>; readonly tests: GuidePreview['tests'] }) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const survey = typed.part('survey');
  const switchedOn = survey.field('switchedOn');
  const search = { plate: survey.values.plateId, yardstick: survey.values.yardstickId, ...survey.values };
  const choosable = tests.filter(({ isOff }) => isOff);
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="survey-title">
      <h2 id="survey-title">The survey it is made from</h2>
      <Told error={workspace.error ?? plates.error ?? yardsticks.error} />
      <Sentence
        request={surveyRequest(search, { category: survey.values.category, plates: plates.data })}
        portionText="the plate’s portion"
        categories={workspace.data?.categories.map(({ name }) => name) ?? []}
        plates={plates.data ?? []}
        yardsticks={yardsticks.data ?? []}
        onChange={({ category, plate, yardstick, setting, servings }) =>
          survey.set({
            ...(category === undefined ? {} : { category }),
            ...(plate === undefined || plate === '' ? {} : { plateId: plate }),
            ...(yardstick === undefined ? {} : { yardstickId: yardstick, switchedOn: [] }),
            ...(setting === undefined ? {} : { setting }),
            ...(servings === undefined ? {} : { servings }),
          })
        }
      />
      {choosable.map(({ id, text }) => (
        <Tick
          key={id}
          label={text}
          value={switchedOn.value.includes(id)}
          onChange={isOn => switchedOn.onChange(isOn ? [...switchedOn.value, id] : switchedOn.value.filter(one => one !== id))}
        />
      ))}
      <div className={layout.formgrid}>
        <Choice label="Foods stand" choices={arrangements} {...typed.field('arrangement')} />
        <Field label="Days until a label is read again" type="number" {...typed.field('recheckAfterDays')} />
      </div>
      {typed.values.arrangement === 'shelf' && (
        <Field
          label="Aisles in the order of the walk, one a line"
          rows={4}
          hint="A food stands in the aisle of its first place to buy."
          {...typed.field('aisles')}
        />
      )}
    </section>
  );
}

const arrangements: Choices<string> = [
  ['shelf', 'as a shopper walks, by aisle'],
  ['maker', 'by maker'],
  ['margin', 'by what is to spare, most first'],
];
