import { Field } from '../../ui/form/Field.tsx';
import type { Typed, TypedRows } from '../../ui/form/typed.ts';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import type { TypedNote } from './typedNote.ts';

const blank = () => ({ text: '' });

/** Problem statements and monitoring of the dietitian's own: they stand behind what is proposed, and the next note of this client begins with them. */
export function OwnSentences({ typed }: { readonly typed: Typed<TypedNote> }) {
  return (
    <>
      <Sentences
        label="Your own problem statements, taken as they are"
        one="Problem statement"
        hint="Problem, related to its cause, as shown by signs and numbers with their days."
        rows={typed.rows('statements')}
      />
      <Sentences
        label="Your own monitoring, taken as it is"
        one="Monitoring"
        hint="What is followed, until when, and its goal."
        rows={typed.rows('monitoring')}
      />
    </>
  );
}

function Sentences(given: {
  readonly label: string;
  readonly one: string;
  readonly hint: string;
  readonly rows: TypedRows<{ readonly text: string }>;
}) {
  const { label, one, hint, rows } = given;
  return (
    <RowsEditor
      label={label}
      rows={rows}
      blank={blank}
      addLabel={`Add: ${one.toLowerCase()}`}
      nameOf={({ text }, at) => (text.trim() === '' ? `${one.toLowerCase()} ${at + 1}` : text)}
      legendOf={(_, at) => `${one} ${at + 1}`}
    >
      {row => <Field label={one} hint={hint} rows={2} maxLength={2_000} {...row.field('text')} />}
    </RowsEditor>
  );
}
