import { useMutation, useQuery } from '@tanstack/react-query';
import { answer, api, type Client, problemOf } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { decidedJson } from './typedDecision.ts';
import type { TypedMeals } from './typedMeals.ts';
import type { TypedPrescription } from './typedPrescription.ts';
import { useRefreshClient } from './useClient.ts';

/** Signing the proposal as a whole; what is signed is never changed. */
export function useSignActions(
  client: Client,
  { decisions, by, credentials }: TypedPrescription,
  acknowledgedChanges: boolean,
  forget: () => Promise<void>,
) {
  const { id, version, assessmentId, weight, targets = [] } = client;
  const refresh = useRefreshClient(id);
  const send = useMutation({
    mutationFn: () =>
      answer(
        api.clients[':id'].prescriptions.$post({
          param: { id },
          json: {
            version,
            assessmentId: assessmentId!,
            ...(weight === undefined ? {} : { weightBasis: weight.chosen }),
            by,
            credentials,
            targets: targets.map(({ item }) => decidedJson(item, decisions[item]!)),
            acknowledgedChanges,
          },
        }),
      ),
    onSuccess: async () => {
      await forget();
      await refresh();
    },
  });
  const sign: Action = { label: 'Sign the prescription', isBusy: send.isPending, run: () => send.mutate() };
  return { sign, fault: send.error };
}

/** Keeping which part of the day's targets each meal may take. */
export function useMealActions({ id, version }: Client, { meals }: TypedMeals, isWhole: boolean, forget: () => Promise<void>) {
  const refresh = useRefreshClient(id);
  const send = useMutation({
    mutationFn: () => {
      const pattern = meals.map(({ name, percent }) => ({ name, percent: Number(percent) }));
      return answer(api.clients[':id'].meals.$put({ param: { id }, json: { version, pattern } }));
    },
    onSuccess: async () => {
      await forget();
      await refresh();
    },
  });
  const keep: Action = { label: 'Keep this pattern', isPossible: isWhole, isBusy: send.isPending, run: () => send.mutate() };
  return { keep, fault: send.error };
}

/** The chart note, read when it is opened, and what can be done with it. */
export function useNoteActions(clientId: string, isOpen: boolean) {
  const param = { id: clientId };
  const note = useQuery({
    queryKey: ['client', clientId, 'note'],
    queryFn: () => answer(api.clients[':id'].note.$get({ param })),
    enabled: isOpen,
    gcTime: 0,
  });
  const save = useMutation({
    mutationFn: async (kind: 'docx' | 'fhir') => {
      const response = await (kind === 'docx' ? api.clients[':id']['note-docx'].$get({ param }) : api.clients[':id'].fhir.$get({ param }));
      if (!response.ok) throw await problemOf(response);
      return { file: await response.blob(), name: kind === 'docx' ? 'chart note.docx' : 'prescription.fhir.json' };
    },
    onSuccess: ({ file, name }) => saveFile(file, name),
  });
  const words = note.data?.text;
  const [isPossible, isBusy] = [isOpen && words !== undefined, save.isPending];
  const copy: Action = { label: 'Copy the note', isPossible, run: () => void navigator.clipboard.writeText(words ?? '') };
  const print: Action = { label: 'Print', about: 'Print the client’s page with the note', isPossible, run: () => window.print() };
  const saveDocx: Action = { label: 'Save as DOCX', isPossible, isBusy, run: () => save.mutate('docx') };
  const saveFhir: Action = { label: 'Save as FHIR R4', isPossible, isBusy, run: () => save.mutate('fhir') };
  return { note: words, copy, print, saveDocx, saveFhir, fault: note.error ?? save.error };
}
