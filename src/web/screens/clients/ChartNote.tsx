import { useState } from 'react';
import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import styles from './ChartNote.module.css';
import { KeptNotes } from './KeptNotes.tsx';
import { NoteBegun } from './NoteBegun.tsx';
import { NoteEditor } from './NoteEditor.tsx';
import { begin, useProposedNoteActions } from './noteActions.ts';
import type { ToCorrect } from './typedNote.ts';

/** The chart note: as it would be written now, in the hands of the dietitian, and as it was kept. */
export function ChartNote({ client }: { readonly client: Client }) {
  const { id } = client;
  const [isOpen, setOpen] = useState(false);
  const [isWriting, setWriting] = useState(false);
  const [toCorrect, setToCorrect] = useState<ToCorrect>();
  const [openNote, setOpenNote] = useState<string>();
  const write = (what?: ToCorrect): void => {
    setToCorrect(what);
    setOpenNote(undefined);
    setOpen(true);
    setWriting(true);
  };
  useOffered(isWriting ? [] : [begin(() => write())]);
  const done = (keptId?: string): void => {
    setWriting(false);
    setOpenNote(keptId);
  };
  return (
    <>
      {!isWriting && <NoteBegun clientId={id} write={write} />}
      <details className={layout.sheet} open={isOpen} onToggle={event => setOpen(event.currentTarget.open)}>
        <summary>Chart note</summary>
        {isWriting && <NoteEditor key={toCorrect?.id} client={client} toCorrect={toCorrect} onDone={done} />}
        {!isWriting && openNote === undefined && <Proposed clientId={id} isOpen={isOpen} write={write} />}
        {isOpen && !isWriting && <KeptNotes clientId={id} openNote={openNote} onOpen={setOpenNote} correct={write} />}
      </details>
    </>
  );
}

/** Read, copied, printed with the client's page, saved. */
function Proposed({ clientId, isOpen, write: begin }: { readonly clientId: string; readonly isOpen: boolean; readonly write: () => void }) {
  const { note, write, copy, print, saveDocx, saveFhir, fault } = useProposedNoteActions(clientId, isOpen, () => begin());
  useOffered([copy, print, saveDocx, saveFhir]);
  return (
    <>
      <Told error={fault} />
      {note !== undefined && (
        <>
          <pre className={styles.note} dir="auto">
            {note}
          </pre>
          <p className={`${layout.row} ${layout.noprint}`}>
            <ActionButton action={write} isMain />
            <ActionButton action={copy} />
            <ActionButton action={print} />
            <ActionButton action={saveDocx} />
            <ActionButton action={saveFhir} />
          </p>
        </>
      )}
    </>
  );
}
