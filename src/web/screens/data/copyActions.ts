import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { useLongWork } from './longActions.ts';

/** What can be done with daily copies: one now, and another folder for those to come. `restore` looks at one. */
export function useCopyActions(restore: (day: string) => void) {
  const queries = useQueryClient();
  const refresh = () => queries.invalidateQueries({ queryKey: ['copies'] });
  const [folder, setFolder] = useState<string>();
  const making = useLongWork({
    work: (_: undefined, { workId, init }) => answer(api.copies.$post({ json: { workId } }, { init })),
    onEnd: refresh,
  });
  const move = useMutation({
    mutationFn: (to: string) => answer(api.copies.folder.$put({ json: { folder: to } })),
    onSuccess: async () => {
      setFolder(undefined);
      await refresh();
    },
  });
  const make: Action = { label: 'Make a copy now', isBusy: making.isRunning, run: () => making.begin(undefined) };
  const use: Action = { label: 'Use this folder', isBusy: move.isPending, run: () => folder !== undefined && move.mutate(folder) };
  const cancel: Action = { label: 'Cancel', run: () => setFolder(undefined) };
  return {
    make,
    making,
    choose: (now: string): Action => ({ label: 'Choose another folder', run: () => setFolder(now) }),
    folder: { typed: folder, set: setFolder, use, cancel },
    restore: (day: string, madeAt: string): Action => ({
      label: 'Restore from it',
      about: `Restore from the copy of ${madeAt}`,
      run: () => restore(day),
    }),
    fault: making.fault ?? move.error,
  };
}

/** A new copy in the place of those of before. */
export function useEarlierCopiesActions() {
  const queries = useQueryClient();
  const renewing = useLongWork({
    work: (_: undefined, { workId, init }) => answer(api.copies.$post({ json: { workId, deleteEarlier: true } }, { init })),
    onEnd: () => queries.invalidateQueries({ queryKey: ['copies'] }),
  });
  const renew: Action = { label: 'Delete earlier copies', isBusy: renewing.isRunning, run: () => renewing.begin(undefined) };
  return { renew, renewing };
}
