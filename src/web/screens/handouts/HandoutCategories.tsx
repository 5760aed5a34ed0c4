import type { HandoutPreview, KeptPlate } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { plateFor } from '../survey/surveyRequest.ts';
import type { HandoutPartProps } from './handoutPart.ts';
import type { TypedCategory } from './typedHandout.ts';

/** Which categories the handout goes through: on which plate, at which meal, in which aisle; foods that are left out. */
export function HandoutCategories(
  given: HandoutPartProps & {
    readonly meals: readonly string[];
    readonly known: readonly string[];
    readonly plates: readonly KeptPlate[];
    readonly foods: HandoutPreview['foods'];
  },
) {
  const { typed, change, wrong, meals, known, plates, foods } = given;
  const { categories } = typed;
  const put = (index: number, part: Partial<TypedCategory>): void =>
    change({ categories: categories.map((one, at) => (at === index ? { ...one, ...part } : one)) });
  const others = known.filter(name => !categories.some(({ category }) => category.toLowerCase() === name.toLowerCase()));
  return (
    <>
      {categories.map((one, index) => (
        <fieldset className={layout.stack} key={one.category}>
          <legend>{one.category}</legend>
          <div className={layout.formgrid}>
            <Field label="As the page calls it" value={one.title} onChange={title => put(index, { title })} />
            <label className={layout.field}>
              <span>Plate</span>
              <select value={one.plateId} onChange={event => put(index, { plateId: event.target.value })}>
                {plates.some(({ plate }) => plate.id === one.plateId) ? null : <option value={one.plateId}>a plate that is gone</option>}
                {plates.map(({ plate }) => (
                  <option key={String(plate.id)} value={String(plate.id)}>
                    {String(plate.title)}
                  </option>
                ))}
              </select>
            </label>
            {meals.length > 0 && (
              <label className={layout.field}>
                <span>Meal</span>
                <select value={one.meal} onChange={event => put(index, { meal: event.target.value })}>
                  {meals.map(name => (
                    <option key={name}>{name}</option>
                  ))}
                </select>
              </label>
            )}
            <Field label="Aisle" value={one.aisle} onChange={aisle => put(index, { aisle })} wrong={wrong(`categories[${index}].aisle`)} />
          </div>
          <LeftOut
            foods={foods.filter(({ category }) => category === one.category)}
            leftOut={one.leftOut}
            onChange={leftOut => put(index, { leftOut })}
          />
          <button
            type="button"
            className={button.quiet}
            onClick={() => change({ categories: categories.filter((_, at) => at !== index) })}
            aria-label={`Take ${one.category} out`}
          >
            Take it out
          </button>
        </fieldset>
      ))}
      {others.length > 0 && (
        <label className={layout.field}>
          <span>Add a category</span>
          <select
            value=""
            onChange={event => {
              const category = event.target.value;
              const meal = meals.includes('lunch') ? 'lunch' : (meals[0] ?? '');
              const plateId = plateFor(category, plates);
              change({ categories: [...categories, { category, title: '', plateId, meal, aisle: '', foodAisles: {}, leftOut: [] }] });
            }}
          >
            <option value="">choose one</option>
            {others.map(name => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
      )}
      <Field
        label="Aisles in the order of the walk, one a line"
        rows={3}
        value={typed.aisleOrder}
        onChange={aisleOrder => change({ aisleOrder })}
      />
    </>
  );
}

function LeftOut(given: {
  readonly foods: HandoutPreview['foods'];
  readonly leftOut: readonly string[];
  readonly onChange: (leftOut: readonly string[]) => void;
}) {
  const { foods, leftOut, onChange } = given;
  const fitting = foods.filter(({ verdict }) => verdict === 'fits');
  if (foods.length === 0) return null;
  return (
    <details>
      <summary>
        {fitting.length} of {foods.length} foods fit{leftOut.length === 0 ? '' : `; ${leftOut.length} left out`}
      </summary>
      <div className={layout.ticks}>
        {fitting.map(({ foodId, name, maker }) => (
          <label className={layout.row} key={foodId}>
            <input
              type="checkbox"
              checked={!leftOut.includes(foodId)}
              onChange={event => onChange(event.target.checked ? leftOut.filter(id => id !== foodId) : [...leftOut, foodId])}
            />
            <span>{maker === undefined ? name : `${name}, ${maker}`}</span>
          </label>
        ))}
      </div>
    </details>
  );
}
