import { useMutation } from '@tanstack/react-query';
import { answer, api, type Label, sent } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';

/** What can be done with one label of a food. `askWhy` shows the form that withdraws it. */
export function useLabelActions(
  label: Label,
  version: number,
  reason: string,
  { askWhy, onChanged }: { readonly askWhy: () => void; readonly onChanged: () => void },
) {
  const withdrawIt = useMutation({
    mutationFn: () => answer(api.labels[':id'].withdraw.$post({ param: { id: label.id }, json: { version, reason } })),
    onSuccess: onChanged,
  });
  const photo = useMutation({
    mutationFn: async (file: File) =>
      sent(fetch(`/api/labels/${label.id}/photos`, { method: 'POST', headers: { 'content-type': file.type }, body: file })),
    onSuccess: onChanged,
  });
  const beginWithdrawal: Action = { label: 'Withdraw …', run: askWhy };
  const withdraw: Action = { label: 'Withdraw this label', isBusy: withdrawIt.isPending, run: () => withdrawIt.mutate() };
  return { beginWithdrawal, withdraw, addPhoto: (file: File) => photo.mutate(file), fault: withdrawIt.error ?? photo.error };
}

/** A day as it is typed, with the day that stood when the typing began. */
export interface TypedDay {
  readonly day: string;
  readonly seen: string;
}

/** Sets the day by which a package is read again. `typed` is undefined while nothing is typed that is not set. */
export function useRecheckActions(
  label: Label,
  typed: TypedDay | undefined,
  { onSet, onChanged }: { readonly onSet: () => void; readonly onChanged: () => void },
) {
  const standing = label.recheckOn ?? '';
  const send = useMutation({
    mutationFn: ({ day, seen }: TypedDay) =>
      answer(api.labels[':id'].recheck.$put({ param: { id: label.id }, json: { seenDueOn: seen || null, dueOn: day || null } })),
    onSuccess: onSet,
    onSettled: onChanged,
  });
  const set: Action = {
    label: typed?.day === '' ? 'Clear this day' : 'Set this day',
    isPossible: typed !== undefined,
    isBusy: send.isPending,
    // Once it was told, what stands now is on the screen and was seen.
    run: () => typed && send.mutate(send.isError ? { ...typed, seen: standing } : typed),
  };
  return { set, fault: send.error };
}
