import type { HandoutPreview, KeptPlate } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone, plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { Bound, Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { plateFor } from '../survey/surveyRequest.ts';
import type { TypedHandout } from './typedHandout.ts';

export interface HandoutFormProps {
  readonly typed: Typed<TypedHandout>;
  /** The meals that a category may stand under; none in a handout on a topic. */
  readonly meals: readonly string[];
  readonly known: readonly string[];
  readonly plates: readonly KeptPlate[];
  readonly foods: HandoutPreview['foods'];
}

/** Which categories the handout goes through: on which plate, at which meal, in which aisle; foods that are left out. */
export function HandoutCategories({ typed, meals, known, plates, foods }: HandoutFormProps) {
  const categories = typed.rows('categories');
  const isThere = (name: string): boolean => typed.values.categories.some(({ category }) => category.toLowerCase() === name.toLowerCase());
  const others = known.filter(name => !isThere(name));
  const add = (category: string): void => {
    if (category === '') return;
    const meal = meals.includes('lunch') ? 'lunch' : (meals[0] ?? '');
    categories.add({ category, title: '', plateId: plateFor(category, plates), meal, aisle: '', foodAisles: [], leftOut: [] });
  };
  return (
    <>
      <RowsEditor
        label="Categories of foods"
        rows={categories}
        legendOf={({ category }) => category}
        nameOf={({ category }) => category}
        below={
          others.length > 0 && (
            <Choice label="Add a category" choices={orNone('choose one', plainChoices(others))} value="" onChange={add} />
          )
        }
      >
        {one => (
          <>
            <div className={layout.formgrid}>
              <Field label="As the page calls it" {...one.field('title')} />
              <Choice
                label="Plate"
                choices={plates.map(({ plate }) => [plate.id, plate.title] as const)}
                gone="a plate that is gone"
                {...one.field('plateId')}
              />
              {meals.length > 0 && (
                <Choice label="Meal" choices={plainChoices(meals)} gone={one.values.meal || 'no meal yet'} {...one.field('meal')} />
              )}
              <Field label="Aisle" {...one.field('aisle')} />
            </div>
            <LeftOut foods={foods.filter(({ category }) => category === one.values.category)} {...one.field('leftOut')} />
          </>
        )}
      </RowsEditor>
      <Field label="Aisles in the order of the walk, one a line" rows={3} {...typed.field('aisleOrder')} />
    </>
  );
}

function LeftOut({ foods, value, onChange }: Bound<readonly string[]> & { readonly foods: HandoutPreview['foods'] }) {
  const fitting = foods.filter(({ verdict }) => verdict === 'fits');
  if (foods.length === 0) return null;
  return (
    <details>
      <summary>
        {fitting.length} of {foods.length} foods fit{value.length === 0 ? '' : `; ${value.length} left out`}
      </summary>
      <div className={layout.ticks}>
        {fitting.map(({ foodId, name, maker }) => (
          <Tick
            key={foodId}
            label={maker === undefined ? name : `${name}, ${maker}`}
            value={!value.includes(foodId)}
            onChange={isIn => onChange(isIn ? value.filter(id => id !== foodId) : [...value, foodId])}
          />
        ))}
      </div>
    </details>
  );
}
