import type { KeptNoteShort } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { OpenLine } from '../../ui/OpenLine.tsx';
import { PaperAlone } from '../../ui/page/PaperAlone.tsx';
import { Told } from '../../ui/Told.tsx';
import styles from './ChartNote.module.css';
import { NotePaper } from './NotePaper.tsx';
import { useKeptNoteActions, useKeptNotes } from './noteActions.ts';
import { noteLine, type ToCorrect } from './typedNote.ts';

/** The notes that were kept, by day, the newest first; one is read at a time, and then printing prints it alone. */
export function KeptNotes(given: {
  readonly clientId: string;
  readonly openNote: string | undefined;
  readonly onOpen: (noteId: string | undefined) => void;
  readonly correct: (what: ToCorrect) => void;
}) {
  const { clientId, openNote, onOpen, correct } = given;
  const notes = useKeptNotes(clientId);
  const kept: readonly KeptNoteShort[] = notes.data ?? [];
  if (kept.length === 0) return <Told error={notes.error} />;
  return (
    <section className={layout.noprint} aria-labelledby="kept-notes-title">
      <Told error={notes.error} />
      <h3 id="kept-notes-title">Kept notes</h3>
      <ul className={layout.plain}>
        {kept.map(note => (
          <li key={note.id}>
            <OpenLine line={noteLine(note)} isOpen={note.id === openNote} onChange={isOpen => onOpen(isOpen ? note.id : undefined)}>
              <Kept clientId={clientId} noteId={note.id} correct={correct} />
            </OpenLine>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Kept(given: { readonly clientId: string; readonly noteId: string; readonly correct: (what: ToCorrect) => void }) {
  const { note, copy, print, saveDocx, saveFhir, correctIt, fault } = useKeptNoteActions(given.clientId, given.noteId, given.correct);
  useOffered([copy, print, saveDocx, saveFhir, correctIt]);
  return (
    <div className={layout.inset}>
      <Told error={fault} />
      {note !== undefined && (
        <>
          <pre className={styles.note} dir="auto">
            {note.text}
          </pre>
          <p className={layout.row}>
            <ActionButton action={copy} isMain />
            <ActionButton action={print} />
            <ActionButton action={saveDocx} />
            <ActionButton action={saveFhir} />
            <ActionButton action={correctIt} />
          </p>
          <PaperAlone>
            <NotePaper
              title={note.title}
              sections={note.sections.map(({ heading, text }) => ({ heading, paragraphs: text.split('\n') }))}
            />
          </PaperAlone>
        </>
      )}
    </div>
  );
}
