import { useMutation } from '@tanstack/react-query';
import { answer, api, type Client } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import type { Typed } from '../../ui/form/typed.ts';
import { useRefreshClient } from './useClient.ts';

/** The forms that a client's screen opens, one at a time. */
export type OpenForm = 'assessment' | 'results' | undefined;

/** What can be begun on a client's screen. */
export function useClientActions(openForm: OpenForm, open: (form: OpenForm) => void, correctIt: () => void) {
  // Not while one is open: what is chosen in a form that is just closing would go with it.
  const isPossible = openForm === undefined;
  const begin = { isPossible, run: () => open('assessment') };
  const assess: Action = { label: 'New assessment', shortcut: 'Alt+N', ...begin };
  const addResults: Action = { label: 'Add results', isPossible, run: () => open('results') };
  const answerIt: Action = { label: 'Answer it in a new assessment', ...begin };
  const correct: Action = { label: 'Correct this assessment', isPossible, run: correctIt };
  return { assess, addResults, answerIt, correct };
}

/** Goes on with what lies half typed in a form. */
export function goOnWith(form: 'assessment' | 'results', open: (form: OpenForm) => void): Action {
  return {
    label: 'Go on',
    about: form === 'assessment' ? 'Go on with the assessment' : 'Go on with the results',
    run: () => open(form),
  };
}

/** Notes who was told of a value, with the time. */
export function useContactActions({ id, version }: Client, cautionId: string, typed: Typed<{ readonly told: string }>) {
  const refresh = useRefreshClient(id);
  const send = useMutation({
    mutationFn: () => answer(api.clients[':id'].contacts.$post({ param: { id }, json: { version, cautionId, told: typed.values.told } })),
    onSuccess: async () => {
      typed.set({ told: '' });
      await refresh();
    },
  });
  const note: Action = { label: 'Note it, with the time', isBusy: send.isPending, run: () => send.mutate() };
  return { note, fault: send.error };
}
