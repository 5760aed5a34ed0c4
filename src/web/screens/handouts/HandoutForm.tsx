import type { HandoutPreview, KeptPlate } from '../../api.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { HandoutCategories } from './HandoutCategories.tsx';
import type { HandoutPartProps } from './handoutPart.ts';
import { partNames } from './typedHandout.ts';

/** What the dietitian writes and picks for a handout. Its numbers are computed; the built-in sentences come in both languages. */
export function HandoutForm({
  typed,
  change,
  wrong,
  ...more
}: HandoutPartProps & {
  /** The meals that a category may stand under; none in a handout on a topic. */
  readonly meals: readonly string[];
  readonly known: readonly string[];
  readonly plates: readonly KeptPlate[];
  readonly foods: HandoutPreview['foods'];
}) {
  return (
    <>
      <div className={layout.formgrid}>
        <label className={layout.field}>
          <span>Language</span>
          <select value={typed.language} onChange={event => change({ language: event.target.value })}>
            <option value="en">English</option>
            <option value="es">Spanish (español)</option>
          </select>
        </label>
        <Field label="Author" value={typed.authorName} onChange={authorName => change({ authorName })} wrong={wrong('author.name')} />
        <Field label="Credentials" value={typed.credentials} onChange={credentials => change({ credentials })} />
      </div>
      {typed.language === 'es' && (
        <p className={layout.notice}>
          The built-in Spanish has not been reviewed by a translator of health texts: have it read by one before a client gets it.
        </p>
      )}
      <Field
        label="Title"
        value={typed.title}
        onChange={title => change({ title })}
        hint="Left empty: a title of the program’s."
        wrong={wrong('title')}
      />
      <Field
        label="For whom, as it will stand on the page"
        value={typed.reader}
        onChange={reader => change({ reader })}
        hint="Left empty: no name. Fridge pages are seen by visitors."
      />
      <Field
        label="Whom to call"
        value={typed.callUs}
        onChange={callUs => change({ callUs })}
        hint="Stands on the fridge page: at most 80 characters."
        wrong={wrong('callUs')}
      />
      <Field
        label="From you, in your words"
        rows={4}
        value={typed.notes}
        onChange={notes => change({ notes })}
        hint="An empty line begins another note. Your words stay in the language you write them in."
      />
      <fieldset className={layout.ticks}>
        <legend>What it holds</legend>
        {Object.entries(partNames).map(([part, name]) => (
          <label className={layout.row} key={part}>
            <input
              type="checkbox"
              checked={typed.parts.includes(part)}
              onChange={event => change({ parts: event.target.checked ? [...typed.parts, part] : typed.parts.filter(one => one !== part) })}
            />
            <span>{name}</span>
          </label>
        ))}
      </fieldset>
      <HandoutCategories typed={typed} change={change} wrong={wrong} {...more} />
    </>
  );
}
