import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Label } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

/** The day by which a package is read again. When another window set one meanwhile, that is told and the day that was typed stays. */
export function RecheckDay({ label, onChanged }: { readonly label: Label; readonly onChanged: () => void }) {
  const [typed, setTyped] = useState<string>();
  const standing = label.recheckOn ?? '';
  const set = useMutation({
    mutationFn: (day: string) =>
      answer(api.labels[':id'].recheck.$put({ param: { id: label.id }, json: { seenDueOn: label.recheckOn ?? null, dueOn: day || null } })),
    onSuccess: () => setTyped(undefined),
    onSettled: onChanged,
  });
  const isOpen = typed !== undefined && typed !== standing;
  return (
    <form
      className="row"
      onSubmit={event => {
        event.preventDefault();
        if (isOpen) set.mutate(typed);
      }}
    >
      <label className="row">
        <span className="small">Recheck by</span>
        <input type="date" value={typed ?? standing} onChange={event => setTyped(event.target.value)} />
      </label>
      {isOpen && (
        <button type="submit" className="quiet" disabled={set.isPending}>
          {typed === '' ? 'Clear this day' : 'Set this day'}
        </button>
      )}
      {set.isError && isOpen && <span className="small">{standing === '' ? 'No day is set now.' : `Set now: ${standing}.`}</span>}
      <Told error={set.error} />
    </form>
  );
}
