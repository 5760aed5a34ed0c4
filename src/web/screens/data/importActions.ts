import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { useLongWork } from './longActions.ts';

type Done = InferResponseType<typeof api.imports.$post, 200>;
/** What each column is; null leaves it out. */
export type Mapping = readonly (string | null)[];

/** A table of labels: chosen, looked at as often as its columns are called otherwise, kept, undone. `onDone` reads anew what is here. */
export function useImportActions(pasted: string, onDone: () => Promise<void>) {
  const queries = useQueryClient();
  const [source, setSource] = useState<File>();
  // Counts what was chosen: a file has no content that a question could be told apart by.
  const [choice, setChoice] = useState(0);
  const [mapping, setMapping] = useState<Mapping>();
  const [done, setDone] = useState<Done>();
  const asked = (workId: string) => ({
    file: source!,
    workId,
    ...(mapping === undefined ? {} : { mapping: mapping.map(key => key ?? '') }),
  });
  const keeping = useLongWork({
    work: (_: undefined, { workId, init }) => answer(api.imports.$post({ form: asked(workId) }, { init })),
    onDone: async result => {
      setDone(result);
      setSource(undefined);
      await onDone();
    },
  });
  const look = useQuery({
    queryKey: ['import-look', choice, mapping],
    // The signal ends the request when the question is withdrawn: another file, another mapping, cancel, another screen.
    queryFn: ({ signal }) => answer(api.imports.look.$post({ form: asked(keeping.workId) }, { init: { signal } })),
    retry: false,
    enabled: source !== undefined,
    placeholderData: before => before,
  });
  const undoing = useMutation({
    mutationFn: (id: string) => answer(api.imports[':id'].undo.$post({ param: { id } })),
    onSuccess: async () => {
      setDone(undefined);
      await queries.invalidateQueries();
    },
  });
  const beginning = useMutation({
    // What is looked at is what is kept, also when the file is changed on the disk between the two.
    mutationFn: async (next: File) => new File([await next.arrayBuffer()], next.name),
    onSuccess: next => {
      setMapping(undefined);
      setDone(undefined);
      keeping.reset();
      setSource(next);
      setChoice(choice + 1);
    },
  });
  const toKeep = look.data?.rows.filter(({ does }) => does !== 'already-there').length ?? 0;
  const lookAtPasted: Action = {
    label: 'Look at it',
    isPossible: pasted.trim() !== '',
    isBusy: beginning.isPending,
    run: () => beginning.mutate(new File([pasted], 'pasted table')),
  };
  const keep: Action = {
    label: `Keep ${toKeep} ${toKeep === 1 ? 'label' : 'labels'}`,
    isPossible: toKeep > 0,
    isBusy: keeping.isRunning,
    run: () => keeping.begin(undefined),
  };
  const cancel: Action = { label: 'Cancel', run: () => setSource(undefined) };
  return {
    begin: (file: File) => beginning.mutate(file),
    isFileUnreadable: beginning.isError,
    lookAtPasted,
    look: source === undefined || keeping.isRunning ? undefined : look.data,
    isLooking: look.isFetching,
    mapping,
    setMapping,
    toKeep,
    keep,
    keeping,
    cancel,
    done,
    undo: (id: string): Action => ({ label: 'Undo this import', isBusy: undoing.isPending, run: () => undoing.mutate(id) }),
    undoEarlier: (id: string, fileName: string): Action => ({
      label: 'Undo',
      about: `Undo the import of ${fileName}`,
      isBusy: undoing.isPending,
      run: () => undoing.mutate(id),
    }),
    fault: look.error ?? keeping.fault ?? undoing.error,
  };
}
