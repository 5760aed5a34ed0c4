import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, problemOf } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { saveFile } from '../../ui/saveFile.ts';
import { Told } from '../../ui/Told.tsx';
import styles from './ChartNote.module.css';

/** The chart note from the assessment and the prescription: read, copied, printed, saved. */
export function ChartNote({ clientId }: { readonly clientId: string }) {
  const [isOpen, setOpen] = useState(false);
  const note = useQuery({
    queryKey: ['client', clientId, 'note'],
    queryFn: () => answer(api.clients[':id'].note.$get({ param: { id: clientId } })),
    enabled: isOpen,
    gcTime: 0,
  });
  const save = useMutation({
    mutationFn: async (kind: 'docx' | 'fhir') => {
      const response = await (kind === 'docx'
        ? api.clients[':id']['note-docx'].$get({ param: { id: clientId } })
        : api.clients[':id'].fhir.$get({ param: { id: clientId } }));
      if (!response.ok) throw await problemOf(response);
      return { file: await response.blob(), name: kind === 'docx' ? 'chart note.docx' : 'prescription.fhir.json' };
    },
    onSuccess: ({ file, name }) => saveFile(file, name),
  });
  return (
    <details className={layout.sheet} onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>Chart note</summary>
      <Told error={note.error ?? save.error} />
      {note.data !== undefined && (
        <>
          <pre className={styles.note}>{note.data.text}</pre>
          <p className={`${layout.row} ${layout.noprint}`}>
            <button type="button" className={button.act} onClick={() => void navigator.clipboard.writeText(note.data.text)}>
              Copy the note
            </button>
            <button type="button" className={button.quiet} onClick={() => window.print()}>
              Print
            </button>
            <button type="button" className={button.quiet} onClick={() => save.mutate('docx')}>
              Save as DOCX
            </button>
            <button type="button" className={button.quiet} onClick={() => save.mutate('fhir')}>
              Save as FHIR R4
            </button>
          </p>
        </>
      )}
    </details>
  );
}
