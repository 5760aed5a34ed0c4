import { useQueryClient } from '@tanstack/react-query';
import { answer, api, type Food, type Label } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';

type PrintedLabel = Label['printed'];

/** What an entry into the form of a label does: it adds a newer label, or mends a misread figure of one, on the state of the food that was shown then. */
export type Entry = { readonly seenVersion: number } & ({ readonly kind: 'read' } | { readonly kind: 'correction'; readonly label: Label });

/** What can be done with a food. `open` shows the form of a label, or none. */
export function useFoodActions(food: Food | undefined, open: (entry: Entry | undefined) => void) {
  const queries = useQueryClient();
  const refresh = (): Promise<void> => queries.invalidateQueries();
  const addLabel: Action = {
    label: 'Add a newer label',
    shortcut: 'Alt+N',
    isPossible: food !== undefined,
    run: () => food !== undefined && open({ kind: 'read', seenVersion: food.version }),
  };
  return {
    addLabel,
    refresh,
    correct: (label: Label): Action => ({
      label: 'Correct a misread figure',
      run: () => food !== undefined && open({ kind: 'correction', label, seenVersion: food.version }),
    }),
  };
}

/** Keeps what the form of a label holds. @throws Problem */
export async function keepLabel(entry: Entry, { id }: Food, label: PrintedLabel, reason: string): Promise<void> {
  const what = entry.kind === 'correction' ? { kind: entry.kind, correctsLabelId: entry.label.id, reason } : { kind: entry.kind };
  await answer(api.foods[':id'].labels.$post({ param: { id }, json: { version: entry.seenVersion, label, ...what } }));
}

/** Puts the question for the maker where it can be pasted from. */
export function copyQuestion(question: string): Action {
  return { label: 'Copy the question', run: () => void navigator.clipboard.writeText(question) };
}
