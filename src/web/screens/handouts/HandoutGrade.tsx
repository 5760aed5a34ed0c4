import type { HandoutPreview } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';

type Grade = NonNullable<HandoutPreview['grade']>;

/** The reading grade, and the sentences that are hard to read: the author's own first, since those can be changed here. */
export function HandoutGrade({ grade, language }: { readonly grade: Grade | undefined; readonly language: string }) {
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="grade-title">
      <h2 id="grade-title">How easy it is to read</h2>
      {grade === undefined ? (
        <p>{language === 'en' ? 'Not measured yet.' : 'Not measured: the formula is for English.'}</p>
      ) : (
        <>
          <p>
            Reading grade <b>{shown(grade.all.withoutFoodNames)}</b> without food names, {shown(grade.all.withFoodNames)} with them; aim: 6
            or lower. Your own words: {shown(grade.author.withoutFoodNames)}.
          </p>
          <Hard title="In your words" sentences={grade.hardest.author} />
          <Hard title="In the program’s words" sentences={grade.hardest.program} />
          <p className={`${text.small} ${text.soft}`}>
            Flesch-Kincaid grade (Kincaid 1975). It counts words and syllables: an easy grade is no proof that a text is understood.
          </p>
        </>
      )}
    </section>
  );
}

function Hard({ title, sentences }: { readonly title: string; readonly sentences: Grade['hardest']['author'] }) {
  if (sentences.length === 0) return null;
  return (
    <div>
      <h3>{title}, harder than grade 6</h3>
      <ul>
        {sentences.map(({ text, grade, why, longWords }) => (
          <li key={text}>
            “{text}” Grade {grade}: {why.join(', ')}
            {longWords.length === 0 ? '' : ` (${longWords.join(', ')})`}.
          </li>
        ))}
      </ul>
    </div>
  );
}

function shown(grade: number | undefined): string {
  return grade === undefined ? 'not measured' : String(grade);
}
