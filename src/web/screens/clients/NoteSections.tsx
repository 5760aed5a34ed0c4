import type { NoteToWrite } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { OneOf } from '../../ui/form/OneOf.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import styles from './ChartNote.module.css';
import { offerActions } from './noteActions.ts';
import { answerChoices, type ReadsOtherwise, readsOtherwise, type TypedNote } from './typedNote.ts';

/** Many times a long section: what is pasted is never cut without a word. */
const longestTyped = 200_000;
const [fewestLines, mostLines, lettersALine] = [2, 14, 90];

/** One field a section; where facts changed since the note was begun, the new text is offered beside it. */
export function NoteSections({ typed, toWrite }: { readonly typed: Typed<TypedNote>; readonly toWrite: NoteToWrite }) {
  const { kind } = typed.values;
  const offers = readsOtherwise(kind, typed.values[kind], toWrite.kinds[kind].sections);
  const rows = typed.rows(kind).each;
  const added = offers.filter(({ heading }) => !rows.some(({ values }) => values.heading === heading));
  return (
    <>
      {offers.length > 0 && (
        <p className={layout.notice} role="status">
          The record has changed since this note was begun. These sections would read otherwise now:{' '}
          {offers.map(({ heading }) => heading).join(', ')}. Nothing you typed is changed until you take the new text.
        </p>
      )}
      {rows.map(row => {
        const { heading, text } = row.values;
        const offer = offers.find(one => one.heading === heading);
        return (
          <div key={heading} className={layout.stack}>
            <Field label={heading} rows={linesOf(text)} maxLength={longestTyped} {...row.field('text')} />
            {offer !== undefined && <Offer typed={typed} offer={offer} />}
            {heading === 'Goals and figures followed' && <Goals typed={typed} />}
          </div>
        );
      })}
      {added.map(offer => (
        <Offer key={offer.heading} typed={typed} offer={offer} />
      ))}
    </>
  );
}

function linesOf(text: string): number {
  const lines = text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / lettersALine)), 0);
  return Math.min(mostLines, Math.max(fewestLines, lines));
}

function Offer({ typed, offer }: { readonly typed: Typed<TypedNote>; readonly offer: ReadsOtherwise }) {
  const { take, leave } = offerActions(typed, offer);
  return (
    <div className={`${layout.notice} ${layout.stack}`}>
      <p>
        <b>{offer.heading}</b> {offer.now === '' ? 'would not be there any more.' : 'would read now:'}
      </p>
      {offer.now !== '' && (
        <pre className={styles.note} dir="auto">
          {offer.now}
        </pre>
      )}
      <p className={layout.row}>
        <ActionButton action={take} />
        <ActionButton action={leave} />
      </p>
    </div>
  );
}

/** The client's goals, in words, are for the dietitian to judge. */
function Goals({ typed }: { readonly typed: Typed<TypedNote> }) {
  return typed
    .rows('goals')
    .each.map(row => <OneOf key={row.values.goal} label={`Goal: ${row.values.goal}`} choices={answerChoices} {...row.field('answer')} />);
}
