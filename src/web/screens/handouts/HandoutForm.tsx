import { Choice } from '../../ui/form/Choice.tsx';
import type { Choices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Ticks } from '../../ui/form/Ticks.tsx';
import layout from '../../ui/layout.module.css';
import { HandoutCategories, type HandoutFormProps } from './HandoutCategories.tsx';
import { partNames } from './typedHandout.ts';

const languages: Choices<string> = [
  ['en', 'English'],
  ['es', 'Spanish (español)'],
];

/** What the dietitian writes and picks for a handout. Its numbers are computed; the built-in sentences come in both languages. */
export function HandoutForm(given: HandoutFormProps) {
  const { typed } = given;
  const author = typed.part('author');
  return (
    <>
      <div className={layout.formgrid}>
        <Choice label="Language" choices={languages} {...typed.field('language')} />
        <Field label="Author" {...author.field('name')} />
        <Field label="Credentials" {...author.field('credentials')} />
      </div>
      {typed.values.language === 'es' && (
        <p className={layout.notice}>
          The built-in Spanish has not been reviewed by a translator of health texts: have it read by one before a client gets it.
        </p>
      )}
      <Field label="Title" hint="Left empty: a title of the program’s." {...typed.field('title')} />
      <Field
        label="For whom, as it will stand on the page"
        hint="Left empty: no name. Fridge pages are seen by visitors."
        {...typed.field('reader')}
      />
      <Field label="Whom to call" hint="Stands on the fridge page: at most 80 characters." {...typed.field('callUs')} />
      <Field
        label="From you, in your words"
        rows={4}
        hint="An empty line begins another note. Your words stay in the language you write them in."
        {...typed.field('notes')}
      />
      <Ticks label="What it holds" choices={partNames} {...typed.field('parts')} />
      <HandoutCategories {...given} />
    </>
  );
}
