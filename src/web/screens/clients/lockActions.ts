import { useMutation } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { thePresence } from '../../lock/lockPresence.ts';
import type { Action } from '../../ui/action/action.ts';
import type { Typed } from '../../ui/form/typed.ts';

/** Locks client data in every window. */
export function useLockNow() {
  const send = useMutation({
    mutationFn: () => answer(api.clients.lock.$post({ json: { open: false } })),
    onSuccess: status => thePresence().learn(status),
  });
  const lock: Action = { label: 'Lock now', about: 'Lock now: client data', run: () => send.mutate() };
  return { lock, fault: send.error };
}

/** Opens the door with a passphrase. */
export function useOpenActions(typed: Typed<{ readonly passphrase: string }>, onOpen: () => Promise<void>) {
  const send = useMutation({
    mutationFn: () => answer(api.clients.lock.$post({ json: { open: true, passphrase: typed.values.passphrase } })),
    onSuccess: status => {
      typed.set({ passphrase: '' });
      thePresence().learn(status);
      return onOpen();
    },
  });
  const open: Action = { label: 'Open', isBusy: send.isPending, run: () => send.mutate() };
  return { open, isWaiting: send.isPending, fault: send.error };
}

/** Passphrases as they are typed: that of now, where there is one, and the new one twice. Never kept. */
export interface TypedPassphrases {
  readonly current: string;
  readonly next: string;
  readonly again: string;
}

export const noPassphrases: TypedPassphrases = { current: '', next: '', again: '' };

export function usePassphraseActions(hasPassphrase: boolean, typed: Typed<TypedPassphrases>) {
  const { current, next, again } = typed.values;
  const send = useMutation({
    mutationFn: () => answer(api.clients.passphrase.$put({ json: hasPassphrase ? { current, next } : { next } })),
    onSuccess: status => {
      typed.set(noPassphrases);
      thePresence().learn(status);
    },
  });
  const change: Action = {
    label: hasPassphrase ? 'Change the passphrase' : 'Set the passphrase',
    isPossible: next !== '' && next === again,
    isBusy: send.isPending,
    run: () => send.mutate(),
  };
  return { change, isChanged: send.isSuccess, fault: send.error };
}

/** After how long without a key or a pointer it locks by itself. */
export function useIdleActions({ minutes }: { readonly minutes: string }) {
  const send = useMutation({
    mutationFn: () => answer(api.clients.lock.idle.$put({ json: { minutes: Number(minutes) } })),
    onSuccess: status => thePresence().learn(status),
  });
  const keep: Action = { label: 'Keep the minutes', isBusy: send.isPending, run: () => send.mutate() };
  return { keep, isKept: send.isSuccess, fault: send.error };
}

/** Asked apart and plainly: what was left empty never takes the passphrase off. */
export function useTakeOffActions({ current }: { readonly current: string }, setAsked: (isAsked: boolean) => void) {
  const send = useMutation({
    mutationFn: () => answer(api.clients.passphrase.$put({ json: { current, confirm: 'take the passphrase off' } })),
    onSuccess: status => thePresence().learn(status),
  });
  const ask: Action = { label: 'Take the passphrase off …', run: () => setAsked(true) };
  const takeOff: Action = { label: 'Take it off', isPossible: current !== '', isBusy: send.isPending, run: () => send.mutate() };
  const leave: Action = { label: 'Keep the passphrase', run: () => setAsked(false) };
  return { ask, takeOff, leave, fault: send.error };
}
