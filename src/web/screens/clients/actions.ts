import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { careFigureIds } from '#core/client/rules/careFigures.ts';
import { answer, api, type ClientShort } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { oneOf } from './vocabulary.ts';

/** What was read of clients is old after a change. */
function useRefreshClients(): () => Promise<void> {
  const queries = useQueryClient();
  return () => queries.invalidateQueries({ queryKey: ['clients'] });
}

/** A new client, known by initials or a code, and the way to its screen. */
export function useAddClient({ name }: { readonly name: string }) {
  const refresh = useRefreshClients();
  const navigate = useNavigate();
  const send = useMutation({
    mutationFn: () => answer(api.clients.$post({ json: { name } })),
    onSuccess: async ({ id }) => {
      await refresh();
      await navigate({ to: '/clients/$clientId', params: { clientId: id } });
    },
  });
  const add: Action = { label: 'Add the client', shortcut: 'Alt+N', isBusy: send.isPending, run: () => send.mutate() };
  return { add, fault: send.error };
}

/** Erasing one client: asked for in a dialog, then done; it can be undone for a while. */
export function useEraseClient(onAsk: (client: ClientShort) => void) {
  const refresh = useRefreshClients();
  return {
    ask: (client: ClientShort): Action => ({ label: 'Erase', about: `Erase ${client.name}`, run: () => onAsk(client) }),
    erase: async ({ id, version, name }: ClientShort): Promise<void> => {
      await answer(api.clients[':id'].$delete({ param: { id }, json: { version, name } }));
      await refresh();
    },
  };
}

/** Erasing everyone: asked for in a dialog, then done for good; with the passphrase while it is locked. */
export function useEraseEveryone(onAsk: () => void) {
  const refresh = useRefreshClients();
  const ask: Action = { label: 'Erase every client', run: onAsk };
  return {
    ask,
    erase: async (passphrase: string): Promise<void> => {
      await answer(api.clients.$delete({ json: { confirm: 'erase every client', ...(passphrase === '' ? {} : { passphrase }) } }));
      await refresh();
    },
  };
}

/** In the dialog that asks: possible once the word is typed, and the passphrase where it is asked for. */
export function useEraseActions(
  given: {
    readonly word: string;
    readonly label: string;
    readonly asksPassphrase?: boolean;
    readonly erase: (passphrase: string) => Promise<unknown>;
    readonly onClose: () => void;
  },
  { word, passphrase }: { readonly word: string; readonly passphrase: string },
) {
  const run = useMutation({ mutationFn: () => given.erase(passphrase), onSuccess: given.onClose });
  const erase: Action = {
    label: given.label,
    isPossible: word.trim() === given.word && (given.asksPassphrase !== true || passphrase !== ''),
    isBusy: run.isPending,
    run: () => run.mutate(),
  };
  const cancel: Action = { label: 'Cancel', run: given.onClose };
  return { erase, cancel, fault: run.error };
}

/** Brings back who was erased a short while ago. */
export function useBringBack() {
  const refresh = useRefreshClients();
  const send = useMutation({
    mutationFn: (id: string) => answer(api.clients[':id']['bring-back'].$post({ param: { id } })),
    onSettled: refresh,
  });
  return {
    bringBack: (id: string, name: string): Action => ({ label: 'Undo', about: `Bring ${name} back`, run: () => send.mutate(id) }),
    fault: send.error,
  };
}

/** Moves what is damaged in the file of clients into a file of its own. */
export function useSetAside() {
  const refresh = useRefreshClients();
  const send = useMutation({
    mutationFn: () => answer(api.clients['set-aside'].$post({ json: { confirm: 'set aside what is damaged' } })),
    onSuccess: refresh,
  });
  const setAside: Action = { label: 'Set aside what is damaged', isBusy: send.isPending, run: () => send.mutate() };
  return { setAside, file: send.data?.file, fault: send.error };
}

/** A figure of the clinic as it is typed: which, how much, and who sets it. */
export interface TypedFigure {
  readonly id: string;
  readonly value: string;
  readonly by: string;
}

/** Sets a figure of this clinic in the place of the usual one. */
export function useCareFigureActions(version: number, { id: typedId, value, by }: TypedFigure, forget: () => Promise<void>) {
  const refresh = useRefreshClients();
  const id = oneOf(careFigureIds, typedId);
  const send = useMutation({
    mutationFn: (json: Parameters<(typeof api)['care-figures']['$put']>[0]['json']) => answer(api['care-figures'].$put({ json })),
    onSuccess: async () => {
      await forget();
      await refresh();
    },
  });
  const set: Action = {
    label: 'Set the figure',
    isBusy: send.isPending,
    run: () => id !== undefined && send.mutate({ version, id, value: Number(value), by }),
  };
  return { set, fault: send.error };
}
