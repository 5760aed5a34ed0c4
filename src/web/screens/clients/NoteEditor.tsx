import { longestNote } from '#core/client/note/writtenNote.ts';
import type { Client, NoteToWrite } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { Draft } from '../../ui/draft/Draft.tsx';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { OneOf } from '../../ui/form/OneOf.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { PaperAlone } from '../../ui/page/PaperAlone.tsx';
import { Reading } from '../../ui/page/Reading.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { NotePaper } from './NotePaper.tsx';
import { NoteSections } from './NoteSections.tsx';
import { useKeptNotes, useNoteToWrite, useWriteNoteActions } from './noteActions.ts';
import { OwnSentences } from './OwnSentences.tsx';
import { kindChoices, noteLine, type ToCorrect, typedNote } from './typedNote.ts';
import { vaultDraft } from './vaultDraft.ts';

interface Given {
  readonly client: Client;
  readonly toCorrect: ToCorrect | undefined;
  /** With the id of the note where it was kept. */
  readonly onDone: (noteId?: string) => void;
}

/** A note in the hands of the dietitian: every section, sentences of her own, goals; kept, or left. */
export function NoteEditor(given: Given) {
  const toWrite = useNoteToWrite(given.client.id);
  if (toWrite.data === undefined) return toWrite.error === null ? <Reading /> : <Told error={toWrite.error} />;
  return <Writing {...given} toWrite={toWrite.data} fault={toWrite.error} />;
}

function Writing({ client, toCorrect, onDone, toWrite, fault }: Given & { readonly toWrite: NoteToWrite; readonly fault: unknown }) {
  const typed = useTyped(() => typedNote(toWrite, client.prescriptions[0]?.signedBy ?? '', toCorrect));
  const draft = useDraft(vaultDraft(client.id, 'note'), typed);
  const notes = useKeptNotes(client.id);
  const { kind } = typed.values;
  const leaving = { forget: draft.forget, onDone: () => onDone(), onKept: onDone };
  const note = useWriteNoteActions(client, typed, toWrite.kinds[kind].title, leaving);
  useOffered([note.copy, note.print]);
  const earlier = (notes.data ?? []).map(one => [one.id, noteLine(one)] as const);
  return (
    <ActionForm action={note.keep} className={layout.stack} formRef={focusFirstField} label="Note">
      <Draft draft={draft} />
      <OneOf label="Kind of note" choices={kindChoices} {...typed.field('kind')} />
      <NoteSections typed={typed} toWrite={toWrite} />
      {kind !== 'lines' && <OwnSentences typed={typed} />}
      <div className={layout.formgrid}>
        <Field label="Written by" maxLength={200} {...typed.field('by')} />
        {earlier.length > 0 && <Choice label="Corrects" choices={[['', 'no earlier note'], ...earlier]} {...typed.field('corrects')} />}
      </div>
      <p className={`${text.small} ${text.soft}`}>
        {note.length.toLocaleString('en')} of {longestNote.toLocaleString('en')} characters. What is kept is never changed: a later note may
        correct it.
      </p>
      {note.length > longestNote && (
        <p className={layout.notice} role="alert">
          The note is too long to be kept. Shorten it, or keep a part of it as a note of its own; what is typed stays.
        </p>
      )}
      <Told error={note.fault ?? notes.error ?? fault} />
      <p className={layout.row}>
        <ActionButton action={note.keep} isMain submits />
        <ActionButton action={note.copy} />
        <ActionButton action={note.print} />
        <ActionButton action={note.cancel} />
      </p>
      <PaperAlone>
        <NotePaper {...note.paper} />
      </PaperAlone>
    </ActionForm>
  );
}
