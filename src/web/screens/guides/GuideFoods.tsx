import { useState } from 'react';
import type { GuidePreview } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { FoodSaid } from './FoodSaid.tsx';
import type { GuidePart } from './GuideWords.tsx';
import type { TypedGuide } from './typedGuide.ts';

type GuideFood = GuidePreview['foods'][number];

/** The foods of the survey, those that readers will see first; what the author says of one opens below it. */
export function GuideFoods({ typed, change, wrong, foods }: GuidePart & { readonly foods: readonly GuideFood[] }) {
  const [search, setSearch] = useState('');
  const [open, setOpen] = useState<string>();
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = [...foods]
    .sort((a, b) => rank(a) - rank(b))
    .filter(({ name, maker = '' }) => words.every(word => `${name} ${maker}`.toLowerCase().includes(word)));
  const few = words.length === 0 ? shown.filter(food => rank(food) < 2 || saidOf(typed, food.foodId) !== '') : shown;
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="foods-title">
      <h2 id="foods-title">What you say of its foods</h2>
      <p className={text.soft}>
        Portion notes, where to buy, a picture; or leave a food out, with the reason. Figures come from the labels.
      </p>
      <label className={layout.field}>
        <span>Search all {foods.length} foods of the survey</span>
        <input type="search" value={search} onChange={event => setSearch(event.target.value)} />
      </label>
      {foods.length === 0 && <p>No food of this category is on the shelf.</p>}
      <ul className={layout.plain}>
        {few.map(food => {
          const isOpen = open === food.foodId;
          return (
            <li key={food.foodId}>
              <button
                type="button"
                className={layout.line}
                aria-expanded={isOpen}
                onClick={() => setOpen(isOpen ? undefined : food.foodId)}
              >
                <span>
                  <b>{food.name}</b>
                  {food.maker === undefined ? '' : `, ${food.maker}`}
                </span>
                <VerdictMark word={food.verdict} />
                {saidOf(typed, food.foodId) !== '' && <span className={`${text.small} ${text.soft}`}>{saidOf(typed, food.foodId)}</span>}
                {food.marks.length > 0 && <span className={text.tag}>check the package</span>}
              </button>
              {isOpen && <FoodSaid typed={typed} change={change} wrong={wrong} food={food} />}
            </li>
          );
        })}
      </ul>
      {words.length > 0 && few.length === 0 && foods.length > 0 && <p>No food of the survey has these words in its name.</p>}
    </section>
  );
}

function rank({ verdict }: GuideFood): number {
  return verdict === 'fits' ? 0 : verdict === 'nearly' ? 1 : 2;
}

/** What is said of a food already, in a few words. */
function saidOf({ portionNotes, whereToBuy, photos, leftOut }: TypedGuide, foodId: string): string {
  return [
    ...(leftOut[foodId] === undefined ? [] : ['left out']),
    ...(portionNotes[foodId] ? ['portion note'] : []),
    ...(whereToBuy[foodId]?.length ? ['where to buy'] : []),
    ...(photos[foodId] === undefined ? [] : ['picture']),
  ].join(', ');
}
