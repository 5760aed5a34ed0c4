import { useMutation, useQueryClient } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';

const words = 'delete everything';

/** The demo in or out, and everything out. `confirm` is what was typed to confirm that; `onDeleted` empties it. */
export function useWorkspaceActions(hasDemo: boolean, confirm: string, onDeleted: () => void) {
  const queries = useQueryClient();
  const refresh = () => queries.invalidateQueries();
  const demo = useMutation({
    mutationFn: (load: boolean) => answer(load ? api.demo.$post() : api.demo.$delete()),
    onSuccess: refresh,
  });
  const deleting = useMutation({
    mutationFn: () => answer(api.workspace.$delete({ json: { confirm: words } })),
    onSuccess: () => {
      onDeleted();
      return refresh();
    },
  });
  const switchDemo: Action = {
    label: hasDemo ? 'Remove the demo' : 'Load the demo',
    isBusy: demo.isPending,
    run: () => demo.mutate(!hasDemo),
  };
  const deleteAll: Action = {
    label: 'Delete everything',
    isPossible: confirm === words,
    isBusy: deleting.isPending,
    run: () => deleting.mutate(),
  };
  return { switchDemo, deleteAll, fault: demo.error ?? deleting.error };
}
