import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { PlateJson } from '#core/plate/plateFromJson.ts';
import { answer, api, type KeptPlate } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import type { Typed } from '../../ui/form/typed.ts';
import { type CompanionEntry, companionFood, plateOf, type TypedPlate } from './typedPlate.ts';

/** What can be done with the plates that are kept. `open` shows the form of one, of a new one, or none. */
export function usePlateActions(open: (what: KeptPlate | 'new') => void) {
  const queries = useQueryClient();
  const [removed, setRemoved] = useState<KeptPlate>();
  const refresh = () => queries.invalidateQueries({ queryKey: ['plates'] });
  const remove = useMutation({
    mutationFn: ({ plate, version }: KeptPlate) =>
      answer(api.plates[':id'].$delete({ param: { id: plate.id }, query: { version: String(version) } })),
    onSuccess: (_, kept) => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ plate }: KeptPlate) => answer(api.plates[':id'].$put({ param: { id: plate.id }, json: { plate, version: null } })),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  const add: Action = { label: 'Add a plate', shortcut: 'Alt+N', run: () => open('new') };
  const undo: Action | undefined = removed && {
    label: 'Undo',
    about: `Undo the removal of ${removed.plate.title}`,
    run: () => putBack.mutate(removed),
  };
  return {
    add,
    change: (kept: KeptPlate): Action => ({ label: 'Change', about: `Change the plate ${kept.plate.title}`, run: () => open(kept) }),
    remove: (kept: KeptPlate): Action => ({
      label: 'Remove',
      about: `Remove the plate ${kept.plate.title}`,
      run: () => remove.mutate(kept),
    }),
    undo,
    removed,
    fault: remove.error ?? putBack.error,
  };
}

/** Saving the form of a plate, or leaving it. `onDone` closes it; `forget` drops its draft. */
export function usePlateFormActions(
  start: KeptPlate | undefined,
  { values }: Typed<TypedPlate>,
  forget: () => Promise<void>,
  onDone: () => void,
) {
  const queries = useQueryClient();
  const close = async (): Promise<void> => {
    await forget();
    onDone();
  };
  const send = useMutation({
    mutationFn: () => {
      const plate: PlateJson = plateOf(start?.plate.id ?? crypto.randomUUID(), values);
      return answer(api.plates[':id'].$put({ param: { id: plate.id }, json: { plate, version: start?.version ?? null } }));
    },
    onSuccess: async () => {
      await queries.invalidateQueries();
      await close();
    },
  });
  const save: Action = { label: 'Save the plate', shortcut: 'Control+S', isBusy: send.isPending, run: () => send.mutate() };
  const cancel: Action = { label: 'Cancel', run: () => void close() };
  return { save, cancel, fault: send.error };
}

/** Puts a food of the shelf on the plate of the form, with its label as it stands today. */
export function useCompanionActions(chosen: string, onAdd: (entry: CompanionEntry) => void) {
  const fetchFood = useMutation({
    mutationFn: companionFood,
    onSuccess: food => onAdd({ key: crypto.randomUUID(), food, portion: { amount: '1', unit: 'servings' } }),
  });
  const add: Action = {
    label: 'Put it on the plate',
    isPossible: chosen !== '',
    isBusy: fetchFood.isPending,
    run: () => fetchFood.mutate(chosen),
  };
  return { add, fault: fetchFood.error };
}
