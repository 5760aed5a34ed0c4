import { useMutation, useQuery } from '@tanstack/react-query';
import { noteText } from '#core/client/note/noteText.ts';
import { longestNote, noteLength, noteOf } from '#core/client/note/writtenNote.ts';
import { answer, api, type Client, type KeptNoteShort, type NoteToWrite, problemOf } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import type { Typed } from '../../ui/form/typed.ts';
import { saveFile } from '../../ui/saveFile.ts';
import type { Leaving } from './assessmentActions.ts';
import { afterOffer, ownToKeep, type ReadsOtherwise, sectionsToKeep, type ToCorrect, type TypedNote } from './typedNote.ts';
import { useRefreshClient } from './useClient.ts';

/** Begins a note, from wherever on the page. */
export function begin(write: () => void): Action {
  return { label: 'Write a note', run: write };
}

/** The chart note as it would be written now, read when it is opened, and what can be done with it. */
export function useProposedNoteActions(clientId: string, isOpen: boolean, write: () => void) {
  const param = { id: clientId };
  const note = useQuery({
    queryKey: ['client', clientId, 'note'],
    queryFn: () => answer(api.clients[':id'].note.$get({ param, query: {} })),
    enabled: isOpen,
    gcTime: 0,
  });
  const save = useMutation({
    mutationFn: async (kind: 'docx' | 'fhir') => {
      const calls = api.clients[':id'];
      const response = await (kind === 'docx' ? calls['note-docx'].$get({ param, query: {} }) : calls.fhir.$get({ param }));
      return fileOf(response, kind === 'docx' ? 'chart note.docx' : 'prescription.fhir.json');
    },
    onSuccess: ({ file, name }) => saveFile(file, name),
  });
  const words = note.data?.text;
  const [isPossible, isBusy] = [isOpen && words !== undefined, save.isPending];
  return {
    note: words,
    write: { ...begin(write), isPossible },
    copy: copying(words ?? '', isPossible),
    print: { label: 'Print', about: 'Print the client’s page with the note', isPossible, run: () => window.print() } satisfies Action,
    saveDocx: { label: 'Save as DOCX', isPossible, isBusy, run: () => save.mutate('docx') } satisfies Action,
    saveFhir: { label: 'Save as FHIR R4', isPossible, isBusy, run: () => save.mutate('fhir') } satisfies Action,
    fault: note.error ?? save.error,
  };
}

/** Keeping the note that is written, or leaving it as it is; on paper it says that it is not kept. `onKept` is told which one it is now. */
export function useWriteNoteActions(
  { id, version }: Client,
  { values }: Typed<TypedNote>,
  title: string,
  leaving: Leaving & { readonly onKept: (noteId: string) => void },
) {
  const refresh = useRefreshClient(id);
  const sections = sectionsToKeep(values);
  const length = noteLength(sections);
  const { kind, by, corrects } = values;
  const send = useMutation({
    mutationFn: () => {
      const json = { version, kind, sections: [...sections], own: ownToKeep(values), by, ...(corrects === '' ? {} : { corrects }) };
      return answer(api.clients[':id'].notes.$post({ param: { id }, json }));
    },
    onSuccess: async kept => {
      await leaving.forget();
      leaving.onKept(kept.id);
      await refresh();
    },
    // Somebody else changed the record: what is proposed is read anew, and the sections that it touches are named.
    onError: refresh,
  });
  const isPossible = sections.length > 0 && length <= longestNote;
  const keep: Action = { label: 'Keep the note', shortcut: 'Control+S', isPossible, isBusy: send.isPending, run: () => send.mutate() };
  const cancel: Action = {
    label: 'Cancel',
    about: 'Cancel the note',
    run: () => void leaving.forget().then(leaving.onDone),
  };
  const paper = noteOf(title, [...sections, { heading: 'Written', text: 'Not kept yet.' }]);
  const print: Action = { label: 'Print', about: 'Print the note alone', run: () => window.print() };
  return { keep, cancel, print, copy: copying(noteText(noteOf(title, sections)), sections.length > 0), paper, length, fault: send.error };
}

/** For a section that reads otherwise now: the new text, or the one that is typed. */
export function offerActions(typed: Typed<TypedNote>, offer: ReadsOtherwise) {
  const { kind } = typed.values;
  const settle = (isTaken: boolean): void => typed.set({ [kind]: afterOffer(kind, typed.values[kind], offer, isTaken) });
  const take: Action = { label: 'Take the new text', about: `Take the new text of ${offer.heading}`, run: () => settle(true) };
  const leave: Action = { label: 'Leave mine', about: `Leave my text of ${offer.heading}`, run: () => settle(false) };
  return { take, leave };
}

/** Reads what a note is written from, anew whenever the record changes. */
export function useNoteToWrite(clientId: string) {
  return useQuery<NoteToWrite>({
    queryKey: ['client', clientId, 'note to write'],
    queryFn: () => answer(api.clients[':id']['note-to-write'].$get({ param: { id: clientId } })),
    gcTime: 0,
  });
}

export function useKeptNotes(clientId: string) {
  return useQuery<KeptNoteShort[]>({
    queryKey: ['client', clientId, 'notes'],
    queryFn: () => answer(api.clients[':id'].notes.$get({ param: { id: clientId } })),
    gcTime: 0,
  });
}

/** One kept note: read again, copied, printed alone, saved as a file, corrected by a new one. */
export function useKeptNoteActions(clientId: string, noteId: string, correct: (what: ToCorrect) => void) {
  const param = { id: clientId, noteId };
  const calls = api.clients[':id'].notes[':noteId'];
  const note = useQuery({
    queryKey: ['client', clientId, 'notes', noteId],
    queryFn: () => answer(calls.$get({ param })),
    gcTime: 0,
  });
  const save = useMutation({
    mutationFn: async (kind: 'docx' | 'fhir') =>
      fileOf(
        await (kind === 'docx' ? calls.docx.$get({ param }) : calls.fhir.$get({ param })),
        kind === 'docx' ? 'note.docx' : 'note.fhir.json',
      ),
    onSuccess: ({ file, name }) => saveFile(file, name),
  });
  const { data } = note;
  const [isPossible, isBusy] = [data !== undefined, save.isPending];
  return {
    note: data,
    copy: { ...copying(data?.text ?? '', isPossible), about: 'Copy the kept note' },
    print: { label: 'Print', about: 'Print the kept note alone', isPossible, run: () => window.print() } satisfies Action,
    saveDocx: {
      label: 'Save as DOCX',
      about: 'Save the kept note as DOCX',
      isPossible,
      isBusy,
      run: () => save.mutate('docx'),
    } satisfies Action,
    saveFhir: {
      label: 'Save as FHIR R4',
      about: 'Save the kept note as FHIR R4',
      isPossible,
      isBusy,
      run: () => save.mutate('fhir'),
    } satisfies Action,
    correctIt: {
      label: 'Correct it in a new note',
      isPossible,
      run: () => data !== undefined && correct({ id: noteId, note: data }),
    } satisfies Action,
    fault: note.error ?? save.error,
  };
}

/** Goes on with a note that lies half typed. */
export function goOnWithNote(write: () => void): Action {
  return { label: 'Go on', about: 'Go on with the note', run: write };
}

function copying(text: string, isPossible: boolean): Action {
  return { label: 'Copy the note', isPossible, run: () => void navigator.clipboard.writeText(text) };
}

async function fileOf(response: Response, name: string) {
  if (!response.ok) throw await problemOf(response);
  return { file: await response.blob(), name };
}
