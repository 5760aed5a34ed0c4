import { useState } from 'react';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import styles from './ChartNote.module.css';
import { useNoteActions } from './prescriptionActions.ts';

/** The chart note from the assessment and the prescription: read, copied, printed, saved. */
export function ChartNote({ clientId }: { readonly clientId: string }) {
  const [isOpen, setOpen] = useState(false);
  const { note, copy, print, saveDocx, saveFhir, fault } = useNoteActions(clientId, isOpen);
  useOffered([copy, print, saveDocx, saveFhir]);
  return (
    <details className={layout.sheet} onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>Chart note</summary>
      <Told error={fault} />
      {note !== undefined && (
        <>
          <pre className={styles.note}>{note}</pre>
          <p className={`${layout.row} ${layout.noprint}`}>
            <ActionButton action={copy} isMain />
            <ActionButton action={print} />
            <ActionButton action={saveDocx} />
            <ActionButton action={saveFhir} />
          </p>
        </>
      )}
    </details>
  );
}
