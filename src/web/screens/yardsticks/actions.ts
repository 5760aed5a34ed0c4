import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { YardstickJson } from '#core/yardstick/yardstickFromJson.ts';
import { answer, api, type KeptYardstick } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';

/** What can be done with the yardsticks that are kept. `open` shows the form of one. */
export function useYardstickActions(open: (kept: KeptYardstick) => void) {
  const queries = useQueryClient();
  const [removed, setRemoved] = useState<KeptYardstick>();
  const refresh = () => queries.invalidateQueries({ queryKey: ['yardsticks'] });
  const drop = useMutation({
    mutationFn: ({ yardstick: { id }, version }: KeptYardstick) =>
      answer(api.yardsticks[':id'].$delete({ param: { id }, query: { version: String(version) } })),
    onSuccess: (_, kept) => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ yardstick }: KeptYardstick) =>
      answer(api.yardsticks[':id'].$put({ param: { id: yardstick.id }, json: { yardstick, version: null } })),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  const undo: Action | undefined = removed && {
    label: 'Undo',
    about: `Undo the removal of ${removed.yardstick.title}`,
    run: () => putBack.mutate(removed),
  };
  return {
    /** A yardstick that is built in is copied to be changed. */
    change: (kept: KeptYardstick): Action => {
      const label = kept.isBuiltIn ? 'Copy and change' : 'Change';
      return { label, about: `${label} ${kept.yardstick.title}`, run: () => open(kept) };
    },
    remove: (kept: KeptYardstick): Action => ({ label: 'Remove', about: `Remove ${kept.yardstick.title}`, run: () => drop.mutate(kept) }),
    undo,
    removed,
    fault: drop.error ?? putBack.error,
  };
}

/** Saving the form of a yardstick, or leaving it. `changed` is undefined while something is missing; `forget` drops its draft. */
export function useYardstickFormActions(
  start: KeptYardstick,
  changed: YardstickJson | undefined,
  forget: () => Promise<void>,
  onDone: () => void,
) {
  const queries = useQueryClient();
  const close = async (): Promise<void> => {
    await forget();
    onDone();
  };
  const send = useMutation({
    mutationFn: (yardstick: YardstickJson) =>
      answer(
        api.yardsticks[':id'].$put({
          param: { id: start.isBuiltIn ? crypto.randomUUID() : yardstick.id },
          json: { yardstick, version: start.isBuiltIn ? null : start.version },
        }),
      ),
    onSuccess: async () => {
      await queries.invalidateQueries();
      await close();
    },
  });
  const save: Action = {
    label: 'Save the yardstick',
    shortcut: 'Control+S',
    isBusy: send.isPending,
    // The browser asks for what is missing before it comes to this.
    run: () => changed && send.mutate(changed),
  };
  const cancel: Action = { label: 'Cancel', run: () => void close() };
  return { save, cancel, fault: send.error };
}
