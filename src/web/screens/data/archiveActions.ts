import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Restored } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { useLongWork } from './longActions.ts';

/** What goes into an archive, and the passphrase that seals client records that have none yet. */
export interface TypedArchive {
  readonly withClients: boolean;
  readonly passphrase: string;
  readonly again: string;
}

/** Makes an archive of everything. `onEnd` lets go of the passphrase that was typed. */
export function useMakeArchive({ withClients, passphrase, again }: TypedArchive, asksPassphrase: boolean, onEnd: () => void) {
  const making = useLongWork({
    work: (_: undefined, { workId, init }) =>
      answer(api.archives.$post({ json: { workId, withClients, ...(asksPassphrase ? { passphrase } : {}) } }, { init })),
    onEnd,
  });
  const make: Action = {
    label: 'Make an archive',
    isPossible: !asksPassphrase || again === passphrase,
    isBusy: making.isRunning,
    run: () => making.begin(undefined),
  };
  return { make, making };
}

/** Looks at a file or a daily copy, and restores it when that is asked for. `onDone` reads anew what is here. */
export function useRestoreActions(onDone: () => Promise<void>) {
  const [restored, setRestored] = useState<Restored>();
  const looking = useLongWork({
    work: (file: File | string, { workId, init }) => {
      setRestored(undefined);
      if (typeof file === 'string') return answer(api.copies[':day'].look.$post({ param: { day: file }, json: { workId } }, { init }));
      const headers = { 'content-type': 'application/octet-stream' };
      return answer(api.archives.brought.$post({ query: { workId } }, { init: { ...init, body: file, headers } }));
    },
  });
  const leaving = useMutation({
    mutationFn: (id: string) => answer(api.archives[':id'].$delete({ param: { id } })),
    onSettled: () => looking.reset(),
  });
  const restoring = useLongWork({
    work: ({ id, json }: { readonly id: string; readonly json: RestoreChoice }, { workId, init }) =>
      answer(api.archives[':id'].restore.$post({ param: { id }, json: { ...json, workId } }, { init })),
    onDone: async result => {
      setRestored(result);
      looking.reset();
      await onDone();
    },
  });
  return {
    look: looking.begin,
    running: looking.isRunning ? looking : restoring.isRunning ? restoring : undefined,
    begins: looking.isRunning ? 'Reading the file' : 'Restoring',
    archive: looking.result,
    restored,
    restore: (id: string, json: RestoreChoice): Action => ({ label: 'Restore', run: () => restoring.begin({ id, json }) }),
    leave: (id: string): Action => ({ label: 'Leave it', isBusy: leaving.isPending, run: () => leaving.mutate(id) }),
    fault: looking.fault ?? restoring.fault,
  };
}

/** Where an archive is restored to, and what of it. */
export type RestoreChoice = Omit<Parameters<(typeof api.archives)[':id']['restore']['$post']>[0]['json'], 'workId'>;
