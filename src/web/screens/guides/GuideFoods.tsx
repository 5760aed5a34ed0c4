import { useState } from 'react';
import type { GuidePreview } from '../../api.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { OpenLine } from '../../ui/OpenLine.tsx';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { FoodSaid } from './FoodSaid.tsx';
import { foodIn, type TypedFood, type TypedGuide } from './typedGuide.ts';

type GuideFood = GuidePreview['foods'][number];

/** The foods of the survey, those that readers will see first; what the author says of one opens below it. */
export function GuideFoods(given: {
  readonly typed: Typed<TypedGuide>;
  readonly typedFood: (foodId: string) => Typed<TypedFood>;
  /** Undefined while they could not be judged yet. */
  readonly foods: readonly GuideFood[] | undefined;
}) {
  const { typed, typedFood, foods } = given;
  const [search, setSearch] = useState('');
  const [open, setOpen] = useState<string>();
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = [...(foods ?? [])]
    .sort((a, b) => rank(a) - rank(b))
    .filter(({ name, maker = '' }) => words.every(word => `${name} ${maker}`.toLowerCase().includes(word)));
  const few = words.length === 0 ? shown.filter(food => rank(food) < 2 || saidOf(typed.values, food.foodId) !== '') : shown;
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="foods-title">
      <h2 id="foods-title">What you say of its foods</h2>
      <p className={text.soft}>
        Portion notes, where to buy, a picture; or leave a food out, with the reason. Figures come from the labels.
      </p>
      {foods === undefined ? (
        <p>The foods stand here as soon as nothing is to be mended.</p>
      ) : (
        <Field label={`Search all ${foods.length} foods of the survey`} type="search" value={search} onChange={setSearch} />
      )}
      {foods?.length === 0 && <p>No food of this category is on the shelf.</p>}
      <ul className={layout.plain}>
        {few.map(food => {
          const { foodId, name, maker, marks } = food;
          const said = saidOf(typed.values, foodId);
          return (
            <li key={foodId}>
              <OpenLine
                isOpen={open === foodId}
                onChange={isOpen => setOpen(isOpen ? foodId : undefined)}
                line={
                  <>
                    <span>
                      <b>{name}</b>
                      {maker === undefined ? '' : `, ${maker}`}
                    </span>
                    <VerdictMark word={food.verdict} />
                    {said !== '' && <span className={`${text.small} ${text.soft}`}>{said}</span>}
                    {marks.length > 0 && <span className={text.tag}>check the package</span>}
                  </>
                }
              >
                <FoodSaid said={typedFood(foodId)} leftOut={typed.rows('leftOut')} food={food} />
              </OpenLine>
            </li>
          );
        })}
      </ul>
      {words.length > 0 && few.length === 0 && foods !== undefined && foods.length > 0 && (
        <p>No food of the survey has these words in its name.</p>
      )}
    </section>
  );
}

function rank({ verdict }: GuideFood): number {
  return verdict === 'fits' ? 0 : verdict === 'nearly' ? 1 : 2;
}

/** What is said of a food already, in a few words. */
function saidOf({ foods, leftOut }: TypedGuide, foodId: string): string {
  const { portionNotes, whereToBuy, photos } = foodIn(foods, foodId);
  return [
    ...(leftOut.some(one => one.foodId === foodId) ? ['left out'] : []),
    ...(portionNotes === '' ? [] : ['portion note']),
    ...(whereToBuy.length === 0 ? [] : ['where to buy']),
    ...(photos.dataUrl === '' ? [] : ['picture']),
  ].join(', ');
}
