import { Link } from '@tanstack/react-router';
import type { GuidePreview } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { FoodPhoto } from './FoodPhoto.tsx';
import type { GuidePart } from './GuideWords.tsx';
import { emptyPlace, type TypedPlace } from './typedGuide.ts';

const placeFields = [
  ['shop', 'Shop', 'text'],
  ['aisle', 'Aisle', 'text'],
  ['url', 'Web address', 'url'],
  ['price', 'Price', 'text'],
  ['priceOn', 'Price seen on', 'date'],
] as const;

/** What the author says of one food: how to measure it, where to buy it, a picture, or why it is left out. */
export function FoodSaid({ typed, change, wrong, food }: GuidePart & { readonly food: GuidePreview['foods'][number] }) {
  const { foodId, name, marks } = food;
  const places = typed.whereToBuy[foodId] ?? [];
  const setPlaces = (next: readonly TypedPlace[]): void => change({ whereToBuy: { ...typed.whereToBuy, [foodId]: next } });
  const { [foodId]: reason, ...otherReasons } = typed.leftOut;
  return (
    <div className={`${layout.stack} ${layout.inset}`}>
      {marks.map(mark => (
        <p className={text.tag} key={mark}>
          {mark}
        </p>
      ))}
      <p>
        <Link to="/foods/$foodId" params={{ foodId }}>
          Open the label of {name}
        </Link>
      </p>
      <Field
        label="How to measure the portion"
        rows={2}
        value={typed.portionNotes[foodId] ?? ''}
        onChange={note => change({ portionNotes: { ...typed.portionNotes, [foodId]: note } })}
      />
      {places.map((place, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: places have no identity, and rows are only added at the end
        <fieldset className={layout.stack} key={index}>
          <legend>Where to buy, {index + 1}</legend>
          <div className={layout.formgrid}>
            {placeFields.map(([key, label, type]) => (
              <Field
                key={key}
                label={label}
                type={type}
                value={place[key]}
                onChange={value => setPlaces(places.map((one, at) => (at === index ? { ...one, [key]: value } : one)))}
                wrong={wrong(`whereToBuy.${foodId}[${index}].${key}`)}
              />
            ))}
          </div>
          <button type="button" className={button.quiet} onClick={() => setPlaces(places.filter((_, at) => at !== index))}>
            Remove this place
          </button>
        </fieldset>
      ))}
      <p className={layout.row}>
        <button type="button" className={button.quiet} onClick={() => setPlaces([...places, emptyPlace])}>
          Add a place to buy
        </button>
      </p>
      <FoodPhoto typed={typed} change={change} foodId={foodId} name={name} />
      <label className={layout.row}>
        <input
          type="checkbox"
          checked={reason !== undefined}
          onChange={event => change({ leftOut: event.target.checked ? { ...otherReasons, [foodId]: '' } : otherReasons })}
        />
        <span>Leave this food out</span>
      </label>
      {reason !== undefined && (
        <Field
          label="Why it is left out (readers see the reason and how many)"
          value={reason}
          onChange={why => change({ leftOut: { ...typed.leftOut, [foodId]: why } })}
          wrong={reason.trim() === '' ? 'Needed: the reason.' : undefined}
        />
      )}
    </div>
  );
}
